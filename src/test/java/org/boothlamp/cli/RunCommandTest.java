package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.report.RunRecord;
import org.boothlamp.report.ShiftRecords;
import org.boothlamp.testing.BoothFolder;
import org.boothlamp.testing.KnownRecording;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The daemon in this process: a recording as its source, which ends by itself; and refusals. */
class RunCommandTest {

  @TempDir Path folder;
  private BoothFolder booth;

  @BeforeEach
  void setUp() {
    booth = new BoothFolder(folder);
  }

  private CommandRun run() {
    return CommandRun.of("run", "--settings", booth.settings());
  }

  @Test
  void shouldLogARecordingAndEndWithIt() {
    KnownRecording recording = KnownRecording.load("stick-five-runs");
    booth.procedure(recording);
    booth
        .source(
            "[source]\nkind = \"recording\"\nspeed = \"full\"\nfile = \""
                + booth.recording(recording)
                + "\"\n")
        .defaultProcedure(recording.procedure().id())
        .write();
    run().exits(0);
    ShiftRecords logged = logged();
    assertEquals(5, logged.runs().size());
    assertEquals(3, logged.touches().size());
    RunRecord second = logged.runs().get(1);
    assertEquals(recording.segments().get(1).meanAmps(), second.meanAmps(), 1);
    assertEquals(recording.procedure().id(), second.procedureId());
    assertEquals("started", logged.events().get(0).what());
    assertEquals("stopped", logged.events().get(logged.events().size() - 1).what());
  }

  private ShiftRecords logged() {
    try (BoothLogReader reader = BoothLogReader.open(booth.log())) {
      return reader.read(0, Long.MAX_VALUE);
    }
  }

  @Test
  void shouldStartNothingWithSettingsThatAreRefused() {
    booth.extra("[arc]\narc_on = 15\n").write();
    CommandRun run = run().exits(2);
    assertTrue(run.err().contains("arc.arc_on"), run.err());
    assertTrue(run.err().contains("arc_on_a"), run.err());
    assertTrue(Files.notExists(booth.log()));
    assertTrue(Files.notExists(booth.trace()));
  }

  @Test
  void shouldStartNothingWithADefaultProcedureThatIsNotThere() {
    booth.defaultProcedure("S-9").write();
    assertTrue(run().exits(2).err().contains("\"S-9\""));
    assertTrue(Files.notExists(booth.log()));
  }

  @Test
  void shouldNotStartWithoutALogAndSayWhatToDo() {
    booth.write();
    booth.write(booth.log().getParent(), "a file where the folder should be");
    CommandRun run = run().exits(1);
    assertEquals("", run.out());
    assertTrue(run.err().contains(booth.log().toString()), run.err());
  }

  @Test
  void shouldNotStartWithALampThatCannotBeHad() {
    booth
        .lamp("\"gpio\"")
        .extra(
            """
            [lamp.gpio]
            red = 17
            amber = 27
            green = 22
            provider = "linuxfs"
            folder = "%s"
            """
                .formatted(folder.resolve("no-pins")))
        .write();
    CommandRun run = run().exits(1);
    assertTrue(run.err().contains("no-pins"), run.err());
  }

  @Test
  void shouldNameSettingsThatAreNotThere() {
    CommandRun run = run().exits(2);
    assertTrue(run.err().contains(booth.settings().toString()), run.err());
  }
}
