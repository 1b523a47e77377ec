package org.boothlamp.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(10)
class WorkerThreadTest {

  private final List<String> calls = new CopyOnWriteArrayList<>();
  private final List<Throwable> errors = new CopyOnWriteArrayList<>();

  /** Notes what it is asked; ends by itself after three steps. */
  private class Noting implements Worker {
    private int steps;

    @Override
    public String roleName() {
      return "noting";
    }

    @Override
    public void start() {
      calls.add("start on " + Thread.currentThread().getName());
    }

    @Override
    public boolean step() {
      calls.add("step");
      return ++steps < 3;
    }

    @Override
    public void close() {
      calls.add("close on " + Thread.currentThread().getName());
    }
  }

  private void runToItsEnd(Worker worker) throws InterruptedException {
    WorkerThread thread = new WorkerThread(worker, errors::add);
    thread.start();
    thread.join();
    assertFalse(thread.isAlive());
  }

  @Test
  void shouldStartStepAndCloseOnAThreadNamedAfterTheRole() throws InterruptedException {
    runToItsEnd(new Noting());
    assertEquals(List.of("start on noting", "step", "step", "step", "close on noting"), calls);
    assertEquals(List.of(), errors);
  }

  @Test
  void shouldHandAnErrorOverOnceAndCloseAllTheSame() throws InterruptedException {
    Error broken = new AssertionError("broken step");
    runToItsEnd(
        new Noting() {
          @Override
          public boolean step() {
            throw broken;
          }
        });
    assertEquals(List.of(broken), errors);
    assertEquals(List.of("start on noting", "close on noting"), calls);
  }

  @Test
  void shouldCloseAWorkerThatCouldNotStart() throws InterruptedException {
    RuntimeException broken = new IllegalStateException("cannot start");
    runToItsEnd(
        new Noting() {
          @Override
          public void start() {
            throw broken;
          }
        });
    assertEquals(List.of(broken), errors);
    assertEquals(List.of("close on noting"), calls);
  }

  @Test
  void shouldHandOverAnErrorOfClosingToo() throws InterruptedException {
    RuntimeException broken = new IllegalStateException("cannot close");
    runToItsEnd(
        new Noting() {
          @Override
          public void close() {
            throw broken;
          }
        });
    assertEquals(List.of(broken), errors);
  }

  @Test
  void shouldStopAfterTheStepWhenAsked() throws InterruptedException {
    CountDownLatch stepping = new CountDownLatch(1);
    WorkerThread thread =
        new WorkerThread(
            new Noting() {
              @Override
              public boolean step() {
                stepping.countDown();
                Thread.yield();
                return true;
              }
            },
            errors::add);
    thread.start();
    stepping.await();
    assertTrue(thread.isAlive());
    thread.close();
    assertFalse(thread.isAlive());
    assertEquals(List.of("start on noting", "close on noting"), calls);
  }
}
