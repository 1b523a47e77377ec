package org.boothlamp.acquisition;

import com.pi4j.io.i2c.I2C;
import com.pi4j.io.i2c.I2CBase;
import com.pi4j.io.i2c.I2CBus;
import com.pi4j.io.i2c.I2CConfig;
import com.pi4j.io.i2c.I2CProvider;
import com.pi4j.io.i2c.I2CProviderBase;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.Callable;
import org.boothlamp.testing.HandTurnedClock;
import org.boothlamp.testing.PairStream;

/**
 * A converter with registers behind a Pi4J provider: converts the counts of a stream, each message
 * and conversion takes its time on the clock, and a test can break it or read what was written.
 */
final class ScriptedI2c {

  private static final int RESET_CONFIG = 0x8583;

  private final HandTurnedClock clock;
  private final I2cDevice device;
  private final PairStream pairs;
  private long messageNanos;
  private long conversionNanos;
  private boolean broken;
  private boolean forgetful;
  private long conversions;
  private int pointer;
  private int config = RESET_CONFIG;
  private int converted;
  private long readyNanos;
  private int openings;
  private List<String> writes;

  ScriptedI2c(HandTurnedClock clock, I2cDevice device, PairStream pairs) {
    this.clock = clock;
    this.device = device;
    this.pairs = pairs;
  }

  I2cSource source(I2cSampling sampling) {
    I2cAddress address = new I2cAddress(1, 0x48);
    return new I2cSource(
        new Pi4jI2c(address, Provider::new),
        address.path(),
        device,
        sampling,
        clock,
        clock::advanceNanos);
  }

  void takeNanos(long eachMessage, long eachConversion) {
    messageNanos = eachMessage;
    conversionNanos = eachConversion;
  }

  void setBroken(boolean isBroken) {
    broken = isBroken;
  }

  /** True lets it fall back to its reset state with every write, as with a bad supply. */
  void setForgetful(boolean isForgetful) {
    forgetful = isForgetful;
  }

  void recordWrites() {
    writes = new ArrayList<>();
  }

  List<String> writes() {
    return writes;
  }

  int openings() {
    return openings;
  }

  private int take(byte[] bytes, int length) {
    message();
    if (writes != null) {
      writes.add(HexFormat.ofDelimiter(" ").formatHex(bytes, 0, length));
    }
    pointer = bytes[0];
    if (length == 3) {
      int word = (bytes[1] & 0xFF) << 8 | bytes[2] & 0xFF;
      config = forgetful ? RESET_CONFIG : word;
      startConversion();
    }
    return length;
  }

  private void startConversion() {
    long pair = conversions / 2;
    converted = conversions % 2 == 0 ? pairs.current(pair) : pairs.voltage(pair);
    conversions++;
    readyNanos = clock.nanoTime() + conversionNanos;
  }

  private int give(byte[] into, int length) {
    message();
    boolean busy = readyNanos - clock.nanoTime() > 0;
    int shift = device == I2cDevice.ADS1015 ? 4 : 0;
    int configNow = busy ? config & 0x7FFF : config | 0x8000;
    int word = pointer == 0 ? converted << shift : configNow;
    into[0] = (byte) (word >> 8);
    into[1] = (byte) word;
    return length;
  }

  private void message() {
    clock.advanceNanos(messageNanos);
    if (broken) {
      throw new IllegalStateException("Remote I/O error");
    }
  }

  private final class Provider extends I2CProviderBase {

    Provider() {
      super("scripted-i2c");
    }

    @Override
    public I2C create(I2CConfig wanted) {
      openings++;
      I2C i2c = new Converter(this, wanted);
      context.registry().add(i2c);
      return i2c;
    }
  }

  private static final class NoBus implements I2CBus {

    @Override
    public <R> R execute(I2C i2c, Callable<R> action) {
      throw new UnsupportedOperationException("plain reads and writes only");
    }
  }

  private final class Converter extends I2CBase<NoBus> {

    Converter(I2CProvider provider, I2CConfig config) {
      super(provider, config, new NoBus());
    }

    @Override
    public int write(byte[] data, int offset, int length) {
      return take(data, length);
    }

    @Override
    public int read(byte[] buffer, int offset, int length) {
      return give(buffer, length);
    }

    @Override
    public int write(byte b) {
      throw new UnsupportedOperationException("whole messages only");
    }

    @Override
    public int read() {
      throw new UnsupportedOperationException("whole messages only");
    }

    @Override
    public int writeRegister(int register, byte b) {
      throw new UnsupportedOperationException("plain reads and writes only");
    }

    @Override
    public int writeRegister(int register, byte[] data, int offset, int length) {
      throw new UnsupportedOperationException("plain reads and writes only");
    }

    @Override
    public int writeRegister(byte[] register, byte[] data, int offset, int length) {
      throw new UnsupportedOperationException("plain reads and writes only");
    }

    @Override
    public int readRegister(int register) {
      throw new UnsupportedOperationException("plain reads and writes only");
    }

    @Override
    public int readRegister(int register, byte[] buffer, int offset, int length) {
      throw new UnsupportedOperationException("plain reads and writes only");
    }

    @Override
    public int readRegister(byte[] register, byte[] buffer, int offset, int length) {
      throw new UnsupportedOperationException("plain reads and writes only");
    }

    @Override
    public int writeReadRegisterWord(int register, int word) {
      throw new UnsupportedOperationException("does no I/O in the real library");
    }
  }
}
