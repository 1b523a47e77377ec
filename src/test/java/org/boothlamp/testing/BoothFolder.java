package org.boothlamp.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.acquisition.RecordingScale;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;

/** A folder with everything a booth is set up with: settings, procedures, a place for the log. */
public final class BoothFolder {

  /** Booth id in the settings. */
  public static final String BOOTH_ID = "B-07";

  /** Source of a booth without hardware. */
  public static final String SIMULATED =
      """
      [source]
      kind = "simulated"
      process = "stick"
      pairs_per_second = 5000
      speed = "full"
      """;

  private final Path folder;
  private String source = SIMULATED;
  private String outputs = "\"trace\"";
  private String defaultProcedure = "";
  private String extra = "";
  private boolean clockHasBattery = true;

  /** A booth in an existing, empty folder, with a simulated source and a trace for a lamp. */
  public BoothFolder(Path folder) {
    this.folder = folder;
    try {
      Files.createDirectories(procedures());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Another source: its tables as they stand in the file. */
  public BoothFolder source(String tables) {
    source = tables;
    return this;
  }

  /** A front end at a port, with the scale of a recording. */
  public BoothFolder serial(Path port, KnownRecording recording) {
    return source(
        """
        [source]
        kind = "serial"
        port = "%s"
        [current]
        amps_per_count = %s
        [voltage]
        volts_per_count = %s
        """
            .formatted(
                port,
                recording.scale().current().unitsPerCount(),
                recording.scale().voltage().unitsPerCount()));
  }

  /** Other lamp outputs: a list as it stands in the file, without brackets. */
  public BoothFolder lamp(String quotedOutputs) {
    outputs = quotedOutputs;
    return this;
  }

  /** What is welded to while nobody is signed in. */
  public BoothFolder defaultProcedure(String id) {
    defaultProcedure = "default_procedure = \"" + id + "\"\n";
    return this;
  }

  /** More tables at the end of the settings. */
  public BoothFolder extra(String tables) {
    extra = tables;
    return this;
  }

  /** A clock that must be set by the network, which nobody can rely on in a test. */
  public BoothFolder clockWithoutBattery() {
    clockHasBattery = false;
    return this;
  }

  /** Writes booth.toml; returns its path. */
  public Path write() {
    return write(
        settings(),
        """
        [booth]
        id = "%s"
        %s
        [lamp]
        outputs = [%s]
        [lamp.trace]
        file = "%s"
        [log]
        folder = "%s"
        [clock]
        battery = %s
        [procedures]
        folder = "%s"
        %s%s"""
            .formatted(
                BOOTH_ID,
                source,
                outputs,
                trace(),
                log().getParent(),
                clockHasBattery,
                procedures(),
                defaultProcedure,
                extra));
  }

  /**
   * Writes a procedure with the windows 95 to 125 A, 20 to 26 V in its passes; returns its file.
   */
  public Path stickProcedure(String id, String... passes) {
    StringBuilder text = new StringBuilder(head(id, "1", "111", "dc+", "cc"));
    for (String pass : passes) {
      text.append(pass(pass, "[95, 125]", "[20, 26]"));
    }
    return write(procedures().resolve(id + ".toml"), text.toString());
  }

  /** Writes the procedure that a recording was welded to; returns its file. */
  public Path procedure(KnownRecording recording) {
    Procedure procedure = recording.procedure();
    Pass pass = procedure.passes().get(0);
    String text =
        head(
                procedure.id(),
                procedure.revision(),
                procedure.process().number(),
                procedure.current().word(),
                procedure.source().word())
            + pass(pass.name(), limits(pass, Quantity.AMPS), limits(pass, Quantity.VOLTS));
    return write(procedures().resolve(recording.name() + ".toml"), text);
  }

  private static String head(
      String id, String revision, String process, String current, String source) {
    return """
        id = "%s"
        revision = "%s"
        process = "%s"
        current = "%s"
        source = "%s"
        """
        .formatted(id, revision, process, current, source);
  }

  private static String pass(String name, String amps, String volts) {
    return """
        [[pass]]
        name = "%s"
        amps = %s
        volts = %s
        """
        .formatted(name, amps, volts);
  }

  private static String limits(Pass pass, Quantity quantity) {
    Window window = pass.window(quantity);
    return "[" + window.low() + ", " + window.high() + "]";
  }

  /** Copies a recording here, with its scale beside it; returns the WAV file. */
  public Path recording(KnownRecording recording) {
    Path wav = folder.resolve(recording.name() + ".wav");
    try {
      Files.copy(recording.wav(), wav);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    RecordingScale.write(RecordingScale.fileBeside(wav), recording.scale());
    return wav;
  }

  /** Writes any file of the booth. */
  public Path write(Path file, String text) {
    try {
      return Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The settings file. */
  public Path settings() {
    return folder.resolve("booth.toml");
  }

  /** The folder of the procedures. */
  public Path procedures() {
    return folder.resolve("procedures");
  }

  /** The booth log's file. */
  public Path log() {
    return folder.resolve("log").resolve("booth.db");
  }

  /** The lamp's trace. */
  public Path trace() {
    return folder.resolve("lamp-trace.csv");
  }
}
