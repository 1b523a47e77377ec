package org.boothlamp.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.boothlamp.report.CalibrationSamples;
import org.boothlamp.testing.BoothFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrateCertificateCommandTest {

  private final RecordsToShow book = new RecordsToShow(CalibrationSamples.accepted());

  @TempDir Path folder;
  @TempDir Path desk;
  private BoothFolder booth;

  @BeforeEach
  void setUp() throws IOException {
    booth = new BoothFolder(folder);
    booth.write();
    Files.createDirectories(booth.log().getParent());
    Files.createFile(booth.log());
  }

  private CommandRun certificate(Object... more) {
    Object[] arguments = new Object[more.length + 5];
    arguments[0] = "calibrate";
    arguments[1] = "certificate";
    arguments[2] = "7";
    arguments[3] = "--settings";
    arguments[4] = booth.settings();
    System.arraycopy(more, 0, arguments, 5, more.length);
    return CommandRun.with(book.parts(), arguments);
  }

  private List<String> onTheDesk() throws IOException {
    try (Stream<Path> files = Files.list(desk)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void shouldWriteThePageAndSayWhere() throws IOException {
    Path file = desk.resolve("c.html");
    CommandRun run = certificate("--out", file).exits(0);
    assertEquals("", run.out());
    assertTrue(run.err().contains(file.toString()), run.err());
    assertTrue(Files.readString(file).startsWith("<!DOCTYPE html>"));
    assertEquals(List.of("c.html"), onTheDesk());
    assertTrue(book.isClosed());
  }

  @Test
  void shouldWriteToStandardOutput() {
    CommandRun run = certificate("--out", "-").exits(0);
    assertTrue(run.out().startsWith("<!DOCTYPE html>"), run.out());
    assertTrue(run.out().endsWith("</html>\n"));
    assertEquals("", run.err());
  }

  @Test
  void shouldWriteTheTable() {
    CommandRun run = certificate("--csv", "--out", "-").exits(0);
    assertTrue(run.out().startsWith("kind,name,value,unit,level_amps,"), run.out());
  }

  @Test
  void shouldNotReplaceAFileUnlessTold() throws IOException {
    Path file = Files.writeString(desk.resolve("c.html"), "signed");
    CommandRun run = certificate("--out", file).exits(1);
    assertTrue(run.err().contains("is there already"), run.err());
    assertTrue(run.err().contains("--force"), run.err());
    assertEquals("signed", Files.readString(file));
    certificate("--out", file, "--force").exits(0);
    assertTrue(Files.readString(file).startsWith("<!DOCTYPE html>"));
    assertEquals(List.of("c.html"), onTheDesk());
  }

  @Test
  void shouldSayThatAFileCannotBeWritten() throws IOException {
    Path nowhere = desk.resolve("none").resolve("c.html");
    CommandRun run = certificate("--out", nowhere).exits(1);
    assertTrue(run.err().contains(nowhere + " cannot be written"), run.err());
    certificate("--out", nowhere, "--force").exits(1);
    Path taken = Files.createDirectories(desk.resolve("folder").resolve("full")).getParent();
    assertFalse(certificate("--out", taken, "--force").exits(1).err().contains("fault of the"));
    assertEquals(List.of("folder"), onTheDesk());
  }

  @Test
  void shouldNameTheFileAfterTheNumber() {
    String help = CommandRun.of("calibrate", "certificate", "--help").exits(0).out();
    assertTrue(help.contains("calibration-N.html"), help);
    assertEquals("calibration-7.html", CalibrateCertificateCommand.defaultName(7, false));
    assertEquals("calibration-7.csv", CalibrateCertificateCommand.defaultName(7, true));
  }
}
