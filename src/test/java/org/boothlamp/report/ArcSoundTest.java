package org.boothlamp.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.boothlamp.arc.ArcRule;
import org.boothlamp.signal.ChannelScale;
import org.boothlamp.signal.PairScale;
import org.boothlamp.signal.ShortCircuitRule;
import org.boothlamp.testing.KnownRecording;
import org.boothlamp.testing.KnownRecording.Truth;
import org.boothlamp.testing.PairsInMemory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;

/** The sound of an arc, read back by the JDK's own reader. */
class ArcSoundTest {

  private static final List<String> NAMES = KnownRecording.NAMES;

  private static final ShortCircuitRule RULE =
      new ShortCircuitRule(ArcRule.STANDARD.shortCircuitVolts(), ArcRule.STANDARD.arcOffAmps());

  private record Heard(int rateHz, double[] samples) {

    double peak() {
      double peak = 0;
      for (double sample : samples) {
        peak = Math.max(peak, Math.abs(sample));
      }
      return peak;
    }

    double rms() {
      double sum = 0;
      for (double sample : samples) {
        sum += sample * sample;
      }
      return Math.sqrt(sum / samples.length);
    }

    double mean() {
      double sum = 0;
      for (double sample : samples) {
        sum += sample;
      }
      return sum / samples.length;
    }

    /** Height of a tone in it: a plain Fourier sum. */
    double amplitude(double hz) {
      double cosine = 0;
      double sine = 0;
      for (int k = 0; k < samples.length; k++) {
        double phase = 2 * Math.PI * hz * k / rateHz;
        cosine += samples[k] * Math.cos(phase);
        sine += samples[k] * Math.sin(phase);
      }
      return 2 * Math.hypot(cosine, sine) / samples.length;
    }

    /** Energy between two frequencies, in steps of a hertz. */
    double energy(double fromHz, double untilHz) {
      double energy = 0;
      for (double hz = fromHz; hz < untilHz; hz++) {
        energy += Math.pow(amplitude(hz), 2);
      }
      return energy;
    }
  }

  private static Heard hear(RawWindow window) throws Exception {
    byte[] wav = ArcSound.wav(window);
    try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(wav))) {
      AudioFormat format = in.getFormat();
      assertEquals(1, format.getChannels());
      assertEquals(16, format.getSampleSizeInBits());
      ByteBuffer bytes = ByteBuffer.wrap(in.readAllBytes()).order(ByteOrder.LITTLE_ENDIAN);
      double[] samples = new double[bytes.remaining() / 2];
      for (int k = 0; k < samples.length; k++) {
        samples[k] = bytes.getShort() / 32_768.0;
      }
      return new Heard((int) format.getSampleRate(), samples);
    }
  }

  private static RawWindow window(KnownRecording known, Truth truth) {
    return RawWindow.of(PairsInMemory.of(known), truth.startSeconds(), truth.endSeconds());
  }

  @ParameterizedTest
  @FieldSource("NAMES")
  void shouldSoundAtItsOwnRateWithoutClippingAndWithoutASteadyPart(String name) throws Exception {
    KnownRecording known = KnownRecording.load(name);
    for (Truth truth : known.segments()) {
      Heard heard = hear(window(known, truth));
      assertEquals(known.pairsPerSecond(), heard.rateHz());
      double length = truth.endSeconds() - truth.startSeconds();
      assertEquals(length, (double) heard.samples().length / heard.rateHz(), 0.001);
      assertTrue(heard.peak() < 0.96, name + " " + heard.peak());
      assertTrue(heard.peak() > 0.3, name + " " + heard.peak());
      assertTrue(heard.rms() > 0.02, name + " " + heard.rms());
      assertEquals(0, heard.mean(), 0.02, name);
    }
  }

  @Test
  void shouldHumAtTheRateOfTheShortCircuits() throws Exception {
    KnownRecording known = KnownRecording.load("short-arc-four-runs");
    for (Truth truth : known.segments()) {
      double from = truth.startSeconds() + 1;
      RawWindow window = RawWindow.of(PairsInMemory.of(known), from, from + 2);
      double hz = ShortSpell.in(window, RULE).size() / 2.0;
      Heard heard = hear(window);
      double hum = heard.energy(0.8 * hz, 1.2 * hz);
      assertTrue(hum > 4 * heard.energy(0.3 * hz, 0.7 * hz), hz + " Hz");
      assertTrue(hum > heard.energy(3.5 * hz, 3.9 * hz), hz + " Hz");
    }
  }

  @ParameterizedTest
  @CsvSource({"short-arc-four-runs, 0.2", "stick-five-runs, 0.2"})
  void shouldLetEachShortCircuitBeHeard(String name, double least) throws Exception {
    KnownRecording known = KnownRecording.load(name);
    for (Truth truth : known.segments()) {
      RawWindow window = window(known, truth);
      double[] samples = hear(window).samples();
      for (ShortSpell one : ShortSpell.in(window, RULE)) {
        int at = (int) Math.round((one.startSeconds() - window.fromSeconds()) * 5_000);
        if (at > 500) {
          assertTrue(samples[at + 1] < -least, name + " " + one + ": " + samples[at + 1]);
        }
      }
    }
  }

  private static RawWindow tone(int pairsPerSecond, double hz, double seconds) {
    int pairs = (int) (pairsPerSecond * seconds);
    short[] voltage = new short[pairs];
    for (int k = 0; k < pairs; k++) {
      voltage[k] = (short) Math.round(10_000 * Math.sin(2 * Math.PI * hz * k / pairsPerSecond));
    }
    PairScale scale = new PairScale(new ChannelScale(1, 0), new ChannelScale(0.001, 0));
    return RawWindow.of(
        new PairsInMemory(pairsPerSecond, scale, new short[pairs], voltage, Long.MAX_VALUE),
        0,
        seconds);
  }

  @ParameterizedTest
  @CsvSource({
    "1000, 8000, 200",
    "2999, 8997, 200",
    "3000, 3000, 200",
    "48000, 48000, 1000",
    "100000, 33333, 1000",
    "50000, 25000, 1000"
  })
  void shouldBringOnlyRatesThatBrowsersDoNotPlayToOneTheyDo(int rate, int soundsAt, double hz)
      throws Exception {
    Heard heard = hear(tone(rate, hz, 1));
    assertEquals(soundsAt, heard.rateHz());
    assertEquals(1, (double) heard.samples().length / soundsAt, 0.002);
    assertEquals(0.5 / Math.sqrt(2), heard.rms(), 0.015);
    // the tone has all of the energy: nothing was mirrored or folded into the sound
    assertEquals(heard.rms() * Math.sqrt(2), heard.amplitude(hz), 0.01);
  }

  @Test
  void shouldNotLetMissingPairsCrack() throws Exception {
    PairScale scale = new PairScale(new ChannelScale(1, 0), new ChannelScale(1, 0));
    short[] voltage = new short[5_000];
    java.util.Arrays.fill(voltage, (short) 20);
    PairsInMemory pairs = new PairsInMemory(5_000, scale, new short[5_000], voltage, 2_500);
    assertEquals(0, hear(RawWindow.of(pairs, 0, 1)).peak());
  }
}
