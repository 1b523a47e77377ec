package org.boothlamp.cli;

import org.boothlamp.boothlog.Beads;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** How commands name a run. */
final class RunNumber {

  private static final String LAST = "last";

  private RunNumber() {}

  /** A number from 1 on, or the word last. */
  static final class Argument implements ITypeConverter<Long> {

    @Override
    public Long convert(String text) {
      if (LAST.equals(text)) {
        return Beads.LATEST;
      }
      if (!text.matches("[1-9][0-9]{0,17}")) {
        throw new TypeConversionException(
            "a run is named by its number in the report, such as 17, or by last; not \""
                + text
                + "\"");
      }
      return Long.valueOf(text);
    }
  }
}
