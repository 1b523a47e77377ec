package org.boothlamp.app;

import java.io.IOException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.boothlamp.cli.PartsException;
import org.boothlamp.cli.Terminal;
import org.boothlamp.lamp.ActiveLevel;
import org.boothlamp.lamp.ConsoleLamp;
import org.boothlamp.lamp.GpioLamp;
import org.boothlamp.lamp.LampFrameSender;
import org.boothlamp.lamp.LampOutput;
import org.boothlamp.lamp.LampPattern;
import org.boothlamp.lamp.LampPins;
import org.boothlamp.lamp.LampUnavailableException;
import org.boothlamp.lamp.RedStyle;
import org.boothlamp.lamp.RefreshedLamp;
import org.boothlamp.lamp.SerialLamp;
import org.boothlamp.lamp.TraceLamp;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.settings.GpioLampSettings;
import org.boothlamp.settings.GpioProvider;
import org.boothlamp.settings.LampKind;
import org.boothlamp.settings.LampSettings;
import org.tinylog.Logger;

/** Builds the lamp that the settings describe. */
final class Lamps {

  private Lamps() {}

  /**
   * A lamp, not started.
   *
   * @param frames takes the lamp frames of a serial front end; null if there is none
   * @throws PartsException if an output cannot be opened; those opened before are dark and closed
   *     again
   */
  static RefreshedLamp open(LampSettings settings, LampFrameSender frames, Terminal terminal) {
    List<LampOutput> outputs = new ArrayList<>();
    try {
      for (LampKind kind : settings.outputs()) {
        outputs.add(open(kind, settings, frames, terminal));
      }
    } catch (LampUnavailableException unavailable) {
      outputs.forEach(Lamps::close);
      throw new PartsException(unavailable.getMessage(), unavailable);
    }
    RedStyle red = settings.redPulses() ? RedStyle.PULSING : RedStyle.STEADY;
    return new RefreshedLamp(outputs, new LampPattern(red), NanoClock.SYSTEM);
  }

  private static LampOutput open(
      LampKind kind, LampSettings settings, LampFrameSender frames, Terminal terminal)
      throws LampUnavailableException {
    return switch (kind) {
      case GPIO -> gpio(settings.gpio());
      case SERIAL -> new SerialLamp(frames, NanoClock.SYSTEM);
      case CONSOLE ->
          new ConsoleLamp(
              terminal.out(), WallClock.SYSTEM, ZoneId.systemDefault(), terminal.colour());
      case TRACE -> TraceLamp.open(settings.traceFile(), NanoClock.SYSTEM);
    };
  }

  private static LampOutput gpio(GpioLampSettings settings) throws LampUnavailableException {
    OptionalInt heartbeat =
        settings.heartbeatPin() == GpioLampSettings.NO_PIN
            ? OptionalInt.empty()
            : OptionalInt.of(settings.heartbeatPin());
    ActiveLevel active = settings.activeLow() ? ActiveLevel.LOW : ActiveLevel.HIGH;
    LampPins pins =
        new LampPins(
            settings.redPin(), settings.amberPin(), settings.greenPin(), heartbeat, active);
    return settings.provider() == GpioProvider.GPIOD
        ? GpioLamp.openGpiod(pins)
        : GpioLamp.openLinuxFs(settings.folder(), pins);
  }

  private static void close(LampOutput output) {
    try {
      output.close();
    } catch (IOException | RuntimeException failure) {
      Logger.warn(
          failure, "lamp: {} did not close; look at it, and switch it off by hand", output.name());
    }
  }
}
