package org.boothlamp.acquisition;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;
import com.pi4j.provider.Provider;

/**
 * Pi4J contexts that hold one provider each: nothing is detected, so nothing unexpected answers,
 * and Pi4J adds no shutdown hook that would race the order of closing.
 */
public final class OneProvider {

  private OneProvider() {}

  /** A context of its own for this provider; whoever asked for it shuts it down. */
  public static Context context(Provider<?, ?, ?> provider) {
    return Pi4J.newContextBuilder().noAutoDetect().disableShutdownHook().add(provider).build();
  }
}
