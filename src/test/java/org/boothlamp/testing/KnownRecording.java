package org.boothlamp.testing;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.boothlamp.judging.ChannelUncertainties;
import org.boothlamp.judging.ExpandedUncertainty;
import org.boothlamp.judging.JudgingPlan;
import org.boothlamp.procedure.Characteristic;
import org.boothlamp.procedure.Pass;
import org.boothlamp.procedure.Procedure;
import org.boothlamp.procedure.Process;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.Polarity;

/**
 * A two-channel recording whose truth is known: made by a circuit simulator that shares no code
 * with this project. They lie beside the checkout and are not part of it; a test that needs one is
 * skipped, with the reason, where they are absent.
 */
public final class KnownRecording {

  /** All of them. */
  public static final List<String> NAMES =
      List.of("stick-five-runs", "short-arc-four-runs", "tacks", "tig-three-runs");

  /** A segment or touch as it truly was. */
  public record Truth(
      double startSeconds,
      double endSeconds,
      double meanAmps,
      double meanVolts,
      double rmsAmps,
      double rmsVolts,
      double energyJoules,
      long shortCircuits) {}

  private final String name;
  private final JsonNode truth;
  private final short[] current;
  private final short[] voltage;

  private KnownRecording(String name, JsonNode truth, short[] current, short[] voltage) {
    this.name = name;
    this.truth = truth;
    this.current = current;
    this.voltage = voltage;
  }

  /**
   * Folder of the recordings: the system property {@code boothlamp.recordings}, or beside the
   * checkout.
   */
  public static Path folder() {
    return Path.of(System.getProperty("boothlamp.recordings", "../shared/recordings"));
  }

  /** Reads one, or skips the calling test. */
  public static KnownRecording load(String name) {
    Path wav = folder().resolve(name + ".wav");
    assumeTrue(
        Files.isReadable(wav),
        () ->
            "recording not found: "
                + wav.toAbsolutePath().normalize()
                + "; put the recordings there or name their folder with -Dboothlamp.recordings=FOLDER");
    try {
      JsonNode truth = new ObjectMapper().readTree(folder().resolve(name + ".truth.json").toFile());
      ShortPairs pairs = readPairs(wav);
      return new KnownRecording(name, truth, pairs.current, pairs.voltage);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (UnsupportedAudioFileException e) {
      throw new IllegalStateException(wav + " is not a WAV file", e);
    }
  }

  private record ShortPairs(short[] current, short[] voltage) {}

  private static ShortPairs readPairs(Path wav) throws IOException, UnsupportedAudioFileException {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
      byte[] bytes = in.readAllBytes();
      int count = bytes.length / 4;
      ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
      short[] current = new short[count];
      short[] voltage = new short[count];
      for (int i = 0; i < count; i++) {
        current[i] = buffer.getShort();
        voltage[i] = buffer.getShort();
      }
      return new ShortPairs(current, voltage);
    }
  }

  /** Its name, without ending. */
  public String name() {
    return name;
  }

  /** Path of the WAV file. */
  public Path wav() {
    return folder().resolve(name + ".wav");
  }

  /** Pairs per second. */
  public int pairsPerSecond() {
    return truth.get("rate_hz").asInt();
  }

  /** Current counts. */
  public short[] current() {
    return current;
  }

  /** Voltage counts. */
  public short[] voltage() {
    return voltage;
  }

  /** Counts to amps and volts. */
  public PairScale scale() {
    return new PairScale(
        new ChannelScale(truth.get("amps_per_count").asDouble(), 0),
        new ChannelScale(truth.get("volts_per_count").asDouble(), 0));
  }

  /** The window it was welded against, as a procedure with the pass "run". */
  public Procedure procedure() {
    JsonNode p = truth.get("procedure");
    Pass pass =
        new Pass(
            "run",
            List.of(window(Quantity.AMPS, p.get("amps")), window(Quantity.VOLTS, p.get("volts"))),
            Double.NaN,
            Double.NaN);
    return new Procedure(
        "R-" + name,
        "1",
        Process.ofNumber(p.get("process").asText()),
        Polarity.ofWord(p.get("current").asText()),
        Characteristic.ofWord(p.get("source").asText()),
        Double.NaN,
        List.of(pass));
  }

  /** The procedure's only pass, made ready for judging with sensors that have no uncertainty. */
  public JudgingPlan plan() {
    Procedure procedure = procedure();
    ExpandedUncertainty none = new ExpandedUncertainty(0, 0);
    return new JudgingPlan(
        procedure, procedure.pass("run"), new ChannelUncertainties(none, none, true));
  }

  private static Window window(Quantity quantity, JsonNode limits) {
    return new Window(quantity, limits.get(0).asDouble(), limits.get(1).asDouble());
  }

  /** True segments in order. */
  public List<Truth> segments() {
    return truths("segments");
  }

  /** True touches in order; only start and end are known. */
  public List<Truth> touches() {
    return truths("touches");
  }

  private List<Truth> truths(String key) {
    List<Truth> list = new ArrayList<>();
    for (JsonNode node : truth.get(key)) {
      list.add(
          new Truth(
              node.get("start_s").asDouble(),
              node.get("end_s").asDouble(),
              node.path("mean_amps").asDouble(),
              node.path("mean_volts").asDouble(),
              node.path("rms_amps").asDouble(),
              node.path("rms_volts").asDouble(),
              node.path("energy_j").asDouble(),
              node.path("short_circuits").asLong()));
    }
    return list;
  }
}
