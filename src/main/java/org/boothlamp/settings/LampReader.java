package org.boothlamp.settings;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/** Reads where and how the signal is shown. */
final class LampReader {

  /** Pins on the header of the usual boards, BCM numbering; from memory. */
  private static final Range BOARD_PINS = new Range(0, 27, "");

  /** The kernel may begin its own numbering anywhere, 512 on some boards; from memory. */
  private static final Range KERNEL_PINS = new Range(0, 2_047, "");

  private final Section section;
  private final SettingsPaths paths;

  LampReader(Section section, SettingsPaths paths) {
    this.section = section;
    this.paths = paths;
  }

  /**
   * The lamp settings.
   *
   * @param source kind of the source, null if not known
   */
  LampSettings read(SourceReader.Kind source) {
    Set<LampKind> outputs = section.words("outputs", kinds(), Set.of(LampKind.CONSOLE));
    boolean redPulses = section.flag("red_pulses", false);
    if (outputs.contains(LampKind.SERIAL) && source != null && source != SourceReader.Kind.SERIAL) {
      refuseSerial();
    }
    return new LampSettings(
        outputs,
        redPulses,
        gpio(outputs.contains(LampKind.GPIO)),
        traceFile(outputs.contains(LampKind.TRACE)));
  }

  private static Map<String, LampKind> kinds() {
    Map<String, LampKind> words = new LinkedHashMap<>();
    words.put("gpio", LampKind.GPIO);
    words.put("serial", LampKind.SERIAL);
    words.put("console", LampKind.CONSOLE);
    words.put("trace", LampKind.TRACE);
    return words;
  }

  private void refuseSerial() {
    section.refuse(
        "outputs",
        "\"serial\" is the lamp on the board that the samples come from, but source.kind is not"
            + " \"serial\"",
        "take \"serial\" out of the list, or write kind = \"serial\" in [source]");
  }

  private Path traceFile(boolean needed) {
    Section trace = section.section("trace");
    return needed || trace.has("file") ? paths.requiredPath(trace, "file", "lamp-trace.csv") : null;
  }

  private GpioLampSettings gpio(boolean needed) {
    if (!needed && !section.has("gpio")) {
      return null;
    }
    Section gpio = section.section("gpio");
    GpioProvider provider = provider(gpio);
    Range pins = provider == GpioProvider.GPIOD ? BOARD_PINS : KERNEL_PINS;
    Map<Integer, String> taken = new HashMap<>();
    return new GpioLampSettings(
        pin(gpio, "red", pins, 17, taken),
        pin(gpio, "amber", pins, 27, taken),
        pin(gpio, "green", pins, 22, taken),
        gpio.has("heartbeat") ? pin(gpio, "heartbeat", pins, 23, taken) : GpioLampSettings.NO_PIN,
        gpio.flag("active_low", false),
        provider,
        folder(gpio, provider));
  }

  private static GpioProvider provider(Section gpio) {
    Map<String, GpioProvider> words = new LinkedHashMap<>();
    words.put("gpiod", GpioProvider.GPIOD);
    words.put("linuxfs", GpioProvider.LINUXFS);
    return gpio.word("provider", words, GpioProvider.GPIOD);
  }

  /** No pin has a default: a pin that drives something else must not be switched by a guess. */
  private static int pin(
      Section gpio, String key, Range pins, int example, Map<Integer, String> taken) {
    int pin = (int) gpio.requiredWhole(key, pins, example);
    String other = gpio.isSound(key) ? taken.putIfAbsent(pin, key) : null;
    if (other != null) {
      gpio.refuse(
          key,
          "must be a pin of its own, but is " + pin + " like " + other,
          "give the number of the pin it is wired to");
    }
    return pin;
  }

  private Path folder(Section gpio, GpioProvider provider) {
    if (provider == GpioProvider.LINUXFS) {
      return paths.path(gpio, "folder", "/sys/class/gpio");
    }
    if (gpio.isSound("provider")) {
      gpio.refuseIfGiven("folder", "belongs to provider \"linuxfs\", but provider is \"gpiod\"");
    }
    return null;
  }
}
