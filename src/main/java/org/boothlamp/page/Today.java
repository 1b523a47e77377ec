package org.boothlamp.page;

import java.time.LocalDate;

/** Which day it is in the booth. */
@FunctionalInterface
interface Today {

  /** The local date now. */
  LocalDate date();
}
