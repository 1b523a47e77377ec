package org.boothlamp.acquisition;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.SourceFormat;
import org.boothlamp.signal.PairScale;

/**
 * A recording that was found whole and readable: a two-channel 16-bit PCM WAV file, channel 1
 * current counts and channel 2 voltage counts, with its scale beside it. Immutable.
 *
 * @param wav the WAV file
 * @param pairsPerSecond rate
 * @param pairs pairs in it, those of the gaps inside
 * @param scale what its counts mean
 * @param gaps where pairs are missing, in order
 */
public record Recording(
    Path wav, int pairsPerSecond, long pairs, PairScale scale, List<PairGap> gaps) {

  public Recording {
    gaps = List.copyOf(gaps);
  }

  private static final String RECORD_AGAIN =
      "give a two-channel 16-bit PCM WAV file: channel 1 current, channel 2 voltage";

  /**
   * Checks a recording and its scale; reads none of its pairs.
   *
   * @throws SourceException if it is not a whole recording
   */
  public static Recording open(Path wav) {
    if (!Files.isRegularFile(wav)) {
      throw new SourceException(
          Reason.MISSING, wav.toString(), "no such recording", "correct the path");
    }
    try (AudioInputStream stream = openStream(wav)) {
      AudioFormat format = stream.getFormat();
      refuseOtherFormats(wav, format);
      refuseTruncated(wav, stream);
      int pairsPerSecond = (int) format.getSampleRate();
      RecordingSheet sheet = RecordingScale.readSheet(RecordingScale.fileBeside(wav));
      return new Recording(
          wav, pairsPerSecond, stream.getFrameLength(), sheet.scale(), sheet.gaps());
    } catch (IOException unreadable) {
      throw unreadable(wav, unreadable);
    }
  }

  /** The bytes of the pairs, little-endian, from the first on. */
  static AudioInputStream openStream(Path wav) {
    try {
      return AudioSystem.getAudioInputStream(wav.toFile());
    } catch (UnsupportedAudioFileException notWav) {
      throw new SourceException(
          Reason.MALFORMED, wav.toString(), "not a WAV file", RECORD_AGAIN, notWav);
    } catch (FileNotFoundException hidden) {
      throw new SourceException(
          Reason.NOT_PERMITTED,
          wav.toString(),
          "the recording cannot be opened: " + hidden.getMessage(),
          "check the file's permissions",
          hidden);
    } catch (IOException unreadable) {
      throw unreadable(wav, unreadable);
    }
  }

  static SourceException unreadable(Path wav, IOException cause) {
    return new SourceException(
        Reason.FAILED,
        wav.toString(),
        "the recording could not be read: " + cause.getMessage(),
        "check the disk",
        cause);
  }

  private static void refuseOtherFormats(Path wav, AudioFormat format) {
    if (format.getChannels() != 2) {
      throw refused(wav, "must have 2 channels, has " + format.getChannels());
    }
    if (format.getSampleSizeInBits() != 16) {
      throw refused(wav, "must have 16 bits a sample, has " + format.getSampleSizeInBits());
    }
    if (!AudioFormat.Encoding.PCM_SIGNED.equals(format.getEncoding()) || format.isBigEndian()) {
      throw refused(wav, "must be plain little-endian PCM, is " + format);
    }
    if (format.getSampleRate() < SourceFormat.LEAST_PAIRS_PER_SECOND) {
      throw refused(
          wav,
          "must have at least "
              + SourceFormat.LEAST_PAIRS_PER_SECOND
              + " pairs a second, has "
              + (long) format.getSampleRate());
    }
  }

  /** Pairs of the gaps. */
  public long missingPairs() {
    return gaps.stream().mapToLong(gap -> Math.min(gap.end(), pairs) - gap.firstPair()).sum();
  }

  private static SourceException refused(Path wav, String what) {
    return new SourceException(Reason.MALFORMED, wav.toString(), what, RECORD_AGAIN);
  }

  /** Before the first pair is read, the stream has available what the file holds of them. */
  private static void refuseTruncated(Path wav, AudioInputStream stream) throws IOException {
    long promisedBytes = stream.getFrameLength() * Frames.PAIR_BYTES;
    long heldBytes = stream.available();
    // A stream cannot say more than an int: beyond that the promise is believed.
    if (heldBytes < Math.min(promisedBytes, Integer.MAX_VALUE - Frames.PAIR_BYTES)) {
      throw new SourceException(
          Reason.MALFORMED,
          wav.toString(),
          "truncated: its header promises "
              + stream.getFrameLength()
              + " pairs, the file holds "
              + heldBytes / Frames.PAIR_BYTES,
          "copy it again, or let an audio tool rewrite its header");
    }
  }
}
