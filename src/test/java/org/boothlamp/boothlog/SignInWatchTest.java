package org.boothlamp.boothlog;

import static org.boothlamp.testing.LogEntries.FIRST_WALL_MILLIS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SignInWatchTest {

  @TempDir Path folder;
  private Path path;
  private WriterBench bench;

  @BeforeEach
  void open() {
    path = folder.resolve(BoothLog.FILE_NAME);
    bench = new WriterBench(path);
  }

  @AfterEach
  void close() {
    bench.close();
  }

  @Test
  void shouldTellOfSignInsInTheirOrder() {
    bench.settle();
    SignIns.add(path, "T17", "S-3F-18", "fill", () -> FIRST_WALL_MILLIS + 10);
    SignIns.add(path, "", "", "", () -> FIRST_WALL_MILLIS + 20);
    bench.settle();

    assertEquals(
        List.of(
            new SignIn(1, FIRST_WALL_MILLIS + 10, "T17", "S-3F-18", "fill"),
            new SignIn(2, FIRST_WALL_MILLIS + 20, "", "", "")),
        bench.signIns);
    assertTrue(bench.signIns.get(1).isSignOut());
  }

  @Test
  void shouldKeepTodaysTraineeOverRestart() {
    SignIns.add(path, "T17", "S-3F-18", "fill", () -> FIRST_WALL_MILLIS - 60_000);
    SignIns.add(path, "T18", "S-3F-18", "cap", () -> FIRST_WALL_MILLIS - 30_000);
    bench.close();
    bench = new WriterBench(path);
    bench.settle();

    assertEquals(List.of("T18"), bench.signIns.stream().map(SignIn::trainee).toList());
  }

  @Test
  void shouldForgetYesterdaysTrainee() {
    SignIns.add(path, "T17", "S-3F-18", "fill", () -> FIRST_WALL_MILLIS - 86_400_000);
    bench.close();
    bench = new WriterBench(path);
    bench.settle();
    assertEquals(List.of(), bench.signIns);

    SignIns.add(path, "T18", "", "", () -> FIRST_WALL_MILLIS);
    bench.settle();
    assertEquals(List.of("T18"), bench.signIns.stream().map(SignIn::trainee).toList());
  }
}
