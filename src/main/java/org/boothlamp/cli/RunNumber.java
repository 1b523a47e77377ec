package org.boothlamp.cli;

import org.boothlamp.boothlog.Beads;
import org.boothlamp.report.BeadRefusedException;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.words.Language;
import org.boothlamp.words.Phrases;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/** How commands name a run. */
final class RunNumber {

  private static final String LAST = "last";

  private RunNumber() {}

  /** What was refused, as a wrong use of the command. */
  static ParameterException refusal(
      CommandSpec spec, BeadRefusedException refused, BoothSettings settings) {
    return new ParameterException(
        spec.commandLine(),
        refused.say(Phrases.in(Language.ENGLISH), settings.screen().units()),
        refused);
  }

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
