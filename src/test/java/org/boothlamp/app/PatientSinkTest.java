package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.atomic.AtomicInteger;
import org.boothlamp.monitor.LogEntry;
import org.junit.jupiter.api.Test;

/** Waiting for room instead of losing an entry. */
class PatientSinkTest {

  @Test
  void shouldOfferAgainUntilThereIsRoom() {
    AtomicInteger offers = new AtomicInteger();
    PatientSink sink = new PatientSink(entry -> offers.incrementAndGet() == 3);
    assertTrue(sink.offer(new LogEntry()));
    assertEquals(3, offers.get());
  }
}
