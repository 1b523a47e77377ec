package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever a slip of the finger does to a file: it is read, or refused with a reason. */
class DamagedFileTest {

  private static final int DAMAGES = 200;
  private static final String TYPED = "\"'[]{}=.,#\n 0-+eé\u0000x";

  @TempDir Path folder;

  @Test
  void shouldReadOrRefuseDamagedSettings() throws IOException {
    assertTrue(refusals(Path.of("config/booth-simulated.toml"), BoothSettingsFile::read) > 0);
  }

  @Test
  void shouldReadOrRefuseDamagedProcedures() throws IOException {
    Path whole = Path.of("config/procedures/flux-cored.toml");
    assertTrue(refusals(whole, ProcedureFile::read) > 0);
  }

  private int refusals(Path whole, Function<Path, ?> reader) throws IOException {
    Random random = new Random(7);
    String text = Files.readString(whole);
    int refused = 0;
    for (int i = 0; i < DAMAGES; i++) {
      Path damaged = folder.resolve("damaged.toml");
      Files.write(damaged, damage(text, random).getBytes(StandardCharsets.UTF_8));
      refused += isRefused(damaged, reader) ? 1 : 0;
    }
    return refused;
  }

  private static boolean isRefused(Path file, Function<Path, ?> reader) {
    try {
      reader.apply(file);
      return false;
    } catch (SettingsException refused) {
      assertFalse(refused.problems().isEmpty());
      return true;
    }
  }

  /** Takes away up to 30 letters at one place and types one there, once or twice. */
  private static String damage(String text, Random random) {
    String damaged = text;
    for (int i = random.nextInt(2); i < 2; i++) {
      int from = random.nextInt(damaged.length());
      int to = Math.min(damaged.length(), from + random.nextInt(30));
      char typed = TYPED.charAt(random.nextInt(TYPED.length()));
      damaged = damaged.substring(0, from) + typed + damaged.substring(to);
    }
    return damaged;
  }
}
