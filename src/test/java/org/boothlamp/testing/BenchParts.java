package org.boothlamp.testing;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.boothlamp.app.Wiring;
import org.boothlamp.calibration.CalibrationBook;
import org.boothlamp.cli.Parts;
import org.boothlamp.monitor.SampleSource;

/** The real parts with some of them exchanged. */
public final class BenchParts {

  private final Map<String, Supplier<?>> exchanged = new HashMap<>();

  /** Another book of calibrations. */
  public BenchParts book(CalibrationBook book) {
    exchanged.put("calibrationBook", () -> book);
    return this;
  }

  /** Another source, made new whenever it is opened. */
  public BenchParts source(Supplier<SampleSource> source) {
    exchanged.put("source", source);
    return this;
  }

  /** The parts as they are now. */
  public Parts parts() {
    Wiring wiring = new Wiring();
    return (Parts)
        Proxy.newProxyInstance(
            Parts.class.getClassLoader(),
            new Class<?>[] {Parts.class},
            (proxy, method, arguments) -> {
              Supplier<?> part = exchanged.get(method.getName());
              try {
                return part == null ? method.invoke(wiring, arguments) : part.get();
              } catch (InvocationTargetException thrown) {
                throw thrown.getCause();
              }
            });
  }
}
