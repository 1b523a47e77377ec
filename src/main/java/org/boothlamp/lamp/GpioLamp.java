package org.boothlamp.lamp;

import com.pi4j.boardinfo.util.BoardInfoHelper;
import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalOutputProvider;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalOutputProvider;
import com.pi4j.plugin.linuxfs.provider.gpio.digital.LinuxFsDigitalOutputProvider;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.acquisition.OneProvider;
import org.boothlamp.judging.Signal;

/**
 * Three lights, and if wanted a heartbeat, on the pins of a single-board computer. All pins are
 * inactive from opening to the first signal and after closing. A pin is written when it changes,
 * and all of them at every tenth refresh, so that a level disturbed from outside lasts half a
 * second at most. Confined to one thread.
 *
 * <p>The heartbeat toggles once for each refresh that somebody's {@code show} asked for, and stops
 * with them: a retriggerable timer behind it can cut the lamp's supply when this program is gone,
 * which no line of this program could do then.
 */
public final class GpioLamp implements LampOutput {

  private static final int REFRESHES_A_REWRITE = 10;

  private final Context context;
  private final String name;
  private final DigitalState lit;
  private final DigitalState unlit;
  private final Light red;
  private final Light amber;
  private final Light green;

  /** Null if there is none. */
  private final DigitalOutput heartbeat;

  private DigitalState heartbeatState;
  private int refreshes;
  private boolean closed;

  private GpioLamp(Context context, String name, LampPins pins) {
    this.context = context;
    this.name = name;
    lit = pins.active() == ActiveLevel.HIGH ? DigitalState.HIGH : DigitalState.LOW;
    unlit = DigitalState.getInverseState(lit);
    heartbeatState = unlit;
    red = new Light(output("red", pins.red()));
    amber = new Light(output("amber", pins.amber()));
    green = new Light(output("green", pins.green()));
    heartbeat =
        pins.heartbeat().isPresent() ? output("heartbeat", pins.heartbeat().getAsInt()) : null;
  }

  private DigitalOutput output(String purpose, int pin) {
    DigitalOutputConfig config =
        DigitalOutput.newConfigBuilder(context)
            .id("lamp-" + purpose)
            .address(pin)
            .initial(unlit)
            .shutdown(unlit)
            .build();
    return context.create(config);
  }

  /**
   * Opens pins through the kernel's GPIO character device.
   *
   * @throws LampUnavailableException if the board is not one Pi4J knows, or a pin is not to be had
   */
  public static GpioLamp openGpiod(LampPins pins) throws LampUnavailableException {
    String name = "gpiod pins " + pins;
    String nextMove =
        "use linuxfs pins on this board, or another kind of lamp; on a board that Pi4J knows, see"
            + " that the user may open /dev/gpiochip* and that no other program holds the pins";
    if (!BoardInfoHelper.runningOnRaspberryPi()) {
      throw unavailable(name, "Pi4J does not recognise this board", nextMove, null);
    }
    return open(GpioDDigitalOutputProvider.newInstance(), name, pins, nextMove);
  }

  /**
   * Opens pins through the kernel's GPIO files.
   *
   * @param folder the folder with {@code export} in it, mostly {@code /sys/class/gpio}
   * @param pins pin numbers as that folder counts them
   * @throws LampUnavailableException if the folder or a pin is not to be had
   */
  public static GpioLamp openLinuxFs(Path folder, LampPins pins) throws LampUnavailableException {
    String name = "linuxfs pins " + pins + " in " + folder;
    String nextMove =
        "see that the kernel offers GPIO files there, that the pins are numbered as in that"
            + " folder, and that the user may write to it";
    if (!Files.isWritable(folder.resolve("export"))) {
      throw unavailable(
          name, folder.resolve("export") + " is missing or not writable", nextMove, null);
    }
    return open(LinuxFsDigitalOutputProvider.newInstance(folder.toString()), name, pins, nextMove);
  }

  /**
   * Opens pins through any provider, in a Pi4J context of their own: nothing is detected, so
   * nothing unexpected answers, and Pi4J adds no shutdown hook that would race the order of
   * closing.
   */
  static GpioLamp open(DigitalOutputProvider provider, String name, LampPins pins, String nextMove)
      throws LampUnavailableException {
    Context context = null;
    try {
      context = OneProvider.context(provider);
      return new GpioLamp(context, name, pins);
    } catch (RuntimeException | LinkageError failure) {
      LampUnavailableException unavailable =
          unavailable(name, rootMessage(failure), nextMove, failure);
      shutDown(context, unavailable);
      throw unavailable;
    }
  }

  private static LampUnavailableException unavailable(
      String name, String what, String nextMove, Throwable cause) {
    return new LampUnavailableException(
        "the lamp's " + name + " cannot be opened: " + what + "; " + nextMove, cause);
  }

  private static String rootMessage(Throwable failure) {
    Throwable root = failure;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    return root.toString();
  }

  private static void shutDown(Context context, Exception reason) {
    if (context == null) {
      return;
    }
    try {
      context.shutdown();
    } catch (RuntimeException failure) {
      reason.addSuppressed(failure);
    }
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public void apply(Signal signal, int lights, long samplesNanos) {
    if (refreshes++ % REFRESHES_A_REWRITE == 0) {
      forgetLevels();
    }
    write(lights);
  }

  private void forgetLevels() {
    red.level = null;
    amber.level = null;
    green.level = null;
  }

  private void write(int lights) {
    RuntimeException failure = red.write((lights & LampPattern.RED) != 0, null);
    failure = amber.write((lights & LampPattern.AMBER) != 0, failure);
    failure = green.write((lights & LampPattern.GREEN) != 0, failure);
    if (failure != null) {
      throw failure;
    }
  }

  /** One pin, and what it was set to. */
  private final class Light {

    private final DigitalOutput output;

    /** Null if it is not known, so that it is to be written. */
    private DigitalState level;

    Light(DigitalOutput output) {
      this.output = output;
    }

    /** Writes the pin whatever became of those before: a dead red must not keep green lit. */
    RuntimeException write(boolean isLit, RuntimeException earlier) {
      DigitalState next = isLit ? lit : unlit;
      if (next == level) {
        return earlier;
      }
      try {
        level = null;
        output.state(next);
        level = next;
        return earlier;
      } catch (RuntimeException failure) {
        return earlier == null ? failure : earlier;
      }
    }
  }

  @Override
  public void beat() {
    if (heartbeat != null) {
      heartbeatState = DigitalState.getInverseState(heartbeatState);
      heartbeat.state(heartbeatState);
    }
  }

  /** Turns every pin inactive, and lets Pi4J do so again before it lets go of them. */
  @Override
  public void close() {
    if (closed) {
      return;
    }
    closed = true;
    try {
      forgetLevels();
      write(0);
    } finally {
      context.shutdown();
    }
  }
}
