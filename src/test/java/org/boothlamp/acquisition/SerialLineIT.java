package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.DataInputStream;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.boothlamp.acquisition.SourceException.Reason;
import org.boothlamp.testing.PtyPair;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real library over pseudo-terminals. */
class SerialLineIT {

  private static final int BAUD = 1_000_000;
  private static final long WAIT_NANOS = TimeUnit.MILLISECONDS.toNanos(40);

  @TempDir Path folder;

  private PtyPair cable;
  private SerialLine line;
  private final byte[] buffer = new byte[4096];

  @BeforeEach
  void open() throws IOException {
    cable = new PtyPair(folder);
    line = new SerialLine(cable.hostSide().toString(), BAUD);
  }

  @AfterEach
  void close() throws IOException {
    line.close();
    cable.close();
  }

  private int readUntilSomething() {
    int count = 0;
    for (int i = 0; i < 100 && count <= 0; i++) {
      count = line.read(buffer, WAIT_NANOS);
    }
    return count;
  }

  private void sendFromBoard(byte[] bytes) throws IOException {
    try (FileOutputStream board = new FileOutputStream(cable.boardSide().toFile())) {
      board.write(bytes);
    }
  }

  @Test
  void shouldCarryBytesBothWays() throws IOException {
    line.open();
    byte[] all = new byte[256];
    for (int i = 0; i < all.length; i++) {
      all[i] = (byte) i;
    }
    sendFromBoard(all);
    int held = 0;
    byte[] received = new byte[256];
    while (held < all.length) {
      int count = readUntilSomething();
      assertTrue(count > 0);
      System.arraycopy(buffer, 0, received, held, count);
      held += count;
    }
    assertArrayEquals(all, received);
    assertTrue(line.write(all, all.length));
    byte[] back = new byte[256];
    try (DataInputStream board =
        new DataInputStream(new FileInputStream(cable.boardSide().toFile()))) {
      board.readFully(back);
    }
    assertArrayEquals(all, back);
  }

  @Test
  void shouldWaitNoLongerThanAsked() {
    line.open();
    long shortestNanos = Long.MAX_VALUE;
    for (int i = 0; i < 5; i++) {
      long start = System.nanoTime();
      assertEquals(0, line.read(buffer, WAIT_NANOS));
      shortestNanos = Math.min(shortestNanos, System.nanoTime() - start);
    }
    assertTrue(
        shortestNanos < TimeUnit.MILLISECONDS.toNanos(50), "waited " + shortestNanos + " ns");
  }

  @Test
  void shouldSayThatThereIsNoSuchPort() {
    SerialLine nowhere = new SerialLine(folder.resolve("nowhere").toString(), BAUD);
    SourceException thrown = assertThrows(SourceException.class, nowhere::open);
    assertEquals(Reason.MISSING, thrown.reason());
    assertEquals(folder.resolve("nowhere").toString(), thrown.where());
    assertTrue(thrown.nextMove().contains("plug the front end in"), thrown.nextMove());
    assertEquals(ByteLine.DOWN, nowhere.read(buffer, WAIT_NANOS));
    assertFalse(nowhere.write(buffer, 1));
  }

  @Test
  void shouldSayThatAnotherProgramHoldsThePort() throws Exception {
    Process holder =
        new ProcessBuilder("flock", cable.hostSide().toRealPath().toString(), "cat").start();
    try {
      SourceException thrown = null;
      for (int i = 0; i < 200 && thrown == null; i++) {
        thrown = openUntilHeld();
      }
      assertNotNull(thrown, "never refused");
      assertEquals(Reason.BUSY, thrown.reason());
      assertTrue(thrown.nextMove().contains("fuser"), thrown.nextMove());
    } finally {
      holder.descendants().forEach(ProcessHandle::destroyForcibly);
      holder.destroyForcibly();
    }
  }

  /** The holder takes a moment to start; until then the port can be had. */
  private SourceException openUntilHeld() throws InterruptedException {
    SerialLine other = new SerialLine(cable.hostSide().toString(), BAUD);
    try {
      other.open();
      TimeUnit.MILLISECONDS.sleep(10);
      return null;
    } catch (SourceException refused) {
      return refused;
    } finally {
      other.close();
    }
  }

  @Test
  void shouldSayThatThisProgramHoldsThePortAlready() {
    line.open();
    SerialLine second = new SerialLine(cable.hostSide().toString(), BAUD);
    assertEquals(Reason.BUSY, assertThrows(SourceException.class, second::open).reason());
  }

  @Test
  void shouldSayThatAFileIsNotASerialPort() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "not a port");
    SerialLine wrong = new SerialLine(file.toString(), BAUD);
    assertEquals(Reason.MALFORMED, assertThrows(SourceException.class, wrong::open).reason());
  }

  @Test
  void shouldOpenAgainByItselfAfterTheCableWasCut() throws IOException {
    assertEquals(0, line.read(buffer, WAIT_NANOS));
    assertEquals(1, line.openings());
    cable.cut();
    assertEquals(ByteLine.DOWN, line.read(buffer, WAIT_NANOS));
    assertFalse(line.write(buffer, 1));
    for (int i = 0; i < 20 && line.failure() == null; i++) {
      assertEquals(ByteLine.DOWN, line.read(buffer, WAIT_NANOS));
    }
    assertEquals(Reason.MISSING, line.failure().reason());
    cable.restore();
    sendFromBoard(new byte[] {1, 2, 3});
    assertEquals(3, readUntilSomething());
    assertEquals(2, line.openings());
    assertNull(line.failure());
    assertTrue(line.write(buffer, 1));
  }

  @Test
  void shouldStayClosedOnceClosed() {
    line.open();
    line.close();
    line.close();
    assertEquals(ByteLine.DOWN, line.read(buffer, WAIT_NANOS));
    assertFalse(line.write(buffer, 1));
    assertEquals(1, line.openings());
  }
}
