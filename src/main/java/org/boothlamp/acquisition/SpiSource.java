package org.boothlamp.acquisition;

import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.SourceFormat;

/**
 * Pairs from a converter on SPI: the current channel first, the voltage channel one transfer later,
 * which is some 50 to 100 µs. Between two samples of a welding arc little changes in that time, but
 * on pulses and at short circuits the two channels are that much out of step.
 *
 * <p>SPI has no acknowledgement: a converter that is gone shows by its null bit if the line idles
 * high, so give it a pull-up resistor; on a line that idles low it reads 0 on both channels, which
 * is the lowest count and counts as clipped.
 *
 * <p>Confined to one thread, but {@link #trouble} and {@link #performance} may be asked from any.
 */
public final class SpiSource extends PolledSource {

  private final SpiLink link;
  private final SpiDevice device;
  private final String name;
  private final ChannelPair channels;
  private final byte[] out = new byte[SpiDevice.FRAME_BYTES];
  private final byte[] in = new byte[SpiDevice.FRAME_BYTES];

  SpiSource(
      SpiLink link,
      String where,
      SpiDevice device,
      ChannelPair channels,
      int pairsPerSecond,
      NanoClock clock,
      Pause pause) {
    super(
        new SourceFormat(pairsPerSecond, 0, device.highestCount(), device.word() + " at " + where),
        clock,
        pause);
    this.link = link;
    this.device = device;
    this.channels = channels;
    name = format().device();
  }

  /** A converter behind the kernel's SPI device file; not opened before the first read. */
  public static SpiSource at(
      SpiAddress address, SpiDevice device, ChannelPair channels, int pairsPerSecond) {
    return new SpiSource(
        Pi4jSpi.linuxFs(address),
        address.path(),
        device,
        channels,
        pairsPerSecond,
        NanoClock.SYSTEM,
        new DeadlinePause());
  }

  @Override
  void connect() {
    link.open();
  }

  @Override
  void disconnect() {
    link.close();
  }

  @Override
  void takePair(short[] current, short[] voltage, int at) {
    current[at] = convert(channels.current());
    voltage[at] = convert(channels.voltage());
  }

  private short convert(int channel) {
    device.request(channel, out);
    link.transfer(out, in);
    if (!device.isAnswer(in)) {
      countBadFrame();
      throw new SourceException(
          Reason.FAILED,
          name,
          "an answer must have a 0 before its count, and had a 1: no converter answers",
          "see that it has power, and that select, clock and both data lines are connected");
    }
    return device.count(in);
  }
}
