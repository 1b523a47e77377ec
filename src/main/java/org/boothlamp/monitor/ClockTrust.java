package org.boothlamp.monitor;

/** Whether somebody who knows has set the machine's clock since it was switched on. */
@FunctionalInterface
public interface ClockTrust {

  /** A clock that is kept while the power is off. */
  ClockTrust ALWAYS = () -> true;

  /** True if the machine's time of day can be believed now. Does not wait. */
  boolean isTrusted();
}
