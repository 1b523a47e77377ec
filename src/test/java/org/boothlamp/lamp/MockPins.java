package org.boothlamp.lamp;

import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalOutputConfig;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalOutput;
import com.pi4j.plugin.mock.provider.gpio.digital.MockDigitalOutputProviderImpl;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Pi4J's mock provider, which lets a test see its pins and break them. */
final class MockPins extends MockDigitalOutputProviderImpl {

  private final Map<Integer, DigitalState> levels = new HashMap<>();
  private final Map<Integer, Integer> changes = new HashMap<>();
  private final Set<Integer> broken = new HashSet<>();

  @Override
  public DigitalOutput create(DigitalOutputConfig config) {
    if (broken.contains(config.address())) {
      throw new IllegalStateException("pin " + config.address() + " is held by another program");
    }
    MockDigitalOutput output = new SeenOutput(config);
    context.registry().add(output);
    return output;
  }

  boolean isHigh(int pin) {
    return levels.get(pin).isHigh();
  }

  int changes(int pin) {
    return changes.getOrDefault(pin, 0);
  }

  void breakPin(int pin) {
    broken.add(pin);
  }

  void mendPin(int pin) {
    broken.remove(pin);
  }

  /** Sets a level behind Pi4J's back. */
  void disturb(int pin, boolean isHigh) {
    levels.put(pin, DigitalState.getState(isHigh));
  }

  private final class SeenOutput extends MockDigitalOutput {

    SeenOutput(DigitalOutputConfig config) {
      super(MockPins.this, config);
    }

    @Override
    public DigitalOutput state(DigitalState state) {
      int pin = config.address();
      if (broken.contains(pin)) {
        throw new IllegalStateException("pin " + pin + " is gone");
      }
      if (levels.put(pin, state) != state) {
        changes.merge(pin, 1, Integer::sum);
      }
      return super.state(state);
    }
  }
}
