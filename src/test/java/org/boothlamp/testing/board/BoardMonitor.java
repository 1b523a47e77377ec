package org.boothlamp.testing.board;

import java.io.EOFException;
import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The emulator's monitor line, which reads the chip's registers while the board runs. Confined to
 * one thread.
 */
final class BoardMonitor implements AutoCloseable {

  private static final String PROMPT = "(qemu) ";

  /**
   * The pin registers of this board's chip from the first on: 6 that say what pins are for, 7 to
   * set and clear, then the level register.
   */
  private static final String READ_PINS = "xp /14wx 0x3f200000\n";

  private static final int WORDS = 14;
  private static final int FUNCTION_WORDS = 3;
  private static final Pattern WORD = Pattern.compile("0x([0-9a-f]{8})(?![0-9a-f])");

  private final SocketChannel channel;
  private final ByteBuffer bytes = ByteBuffer.allocate(4_096);

  private BoardMonitor(SocketChannel channel) {
    this.channel = channel;
  }

  static BoardMonitor open(Path socket) throws IOException {
    SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX);
    channel.connect(UnixDomainSocketAddress.of(socket));
    BoardMonitor monitor = new BoardMonitor(channel);
    monitor.answer();
    return monitor;
  }

  /** The pins now, which is {@code seconds}. */
  PinSample sample(double seconds) throws IOException {
    channel.write(ByteBuffer.wrap(READ_PINS.getBytes(StandardCharsets.US_ASCII)));
    String answer = answer();
    int[] words = new int[WORDS];
    Matcher matcher = WORD.matcher(answer);
    for (int k = 0; k < WORDS; k++) {
      if (!matcher.find()) {
        throw new IOException("no register " + k + " in the monitor's answer: " + answer);
      }
      words[k] = Integer.parseUnsignedInt(matcher.group(1), 16);
    }
    return PinSample.of(seconds, Arrays.copyOf(words, FUNCTION_WORDS), words[WORDS - 1]);
  }

  /**
   * What came up to the next prompt, from the first colon on: the line before it is the command's
   * echo, made for a person at a terminal.
   */
  private String answer() throws IOException {
    StringBuilder text = new StringBuilder();
    while (!text.toString().endsWith(PROMPT)) {
      bytes.clear();
      if (channel.read(bytes) < 0) {
        throw new EOFException("the emulator has ended; look at its console");
      }
      text.append(StandardCharsets.ISO_8859_1.decode(bytes.flip()));
    }
    return text.substring(Math.max(0, text.indexOf(":")));
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
