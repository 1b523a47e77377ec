package org.boothlamp.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import org.boothlamp.acquisition.BadgeReader;
import org.boothlamp.acquisition.SourceException;
import org.boothlamp.boothlog.BoothLogException;
import org.boothlamp.boothlog.BoothLogReader;
import org.boothlamp.monitor.EventKind;
import org.boothlamp.settings.BadgeTableFile;
import org.boothlamp.testing.HandTurnedClock;
import org.junit.jupiter.api.Test;

/** What a badge does: who is signed in, what is refused, what is said of it. */
class BadgeDeskTest {

  private static final Map<String, String> TABLE =
      Map.of("0004711", "T-04", "0004712", "T-11", "0009999", "");

  private final Queue<String> codes = new ArrayDeque<>();
  private final List<String> told = new ArrayList<>();
  private final HandTurnedClock clock = new HandTurnedClock();
  private SourceException failure;
  private String signedIn = "";
  private boolean logIsLocked;
  private boolean closed;

  private final BadgeReader reader =
      new BadgeReader() {
        @Override
        public String next(long waitNanos) {
          return codes.poll();
        }

        @Override
        public SourceException failure() {
          return failure;
        }

        @Override
        public void close() {
          closed = true;
        }
      };

  private final BadgeDesk.Booth booth =
      new BadgeDesk.Booth() {
        @Override
        public String signedIn() {
          return signedIn;
        }

        @Override
        public void signIn(String trainee) {
          if (logIsLocked) {
            throw locked();
          }
          signedIn = trainee;
          told.add("sign in " + trainee);
        }

        @Override
        public void refuse() {
          told.add("refuse");
        }

        @Override
        public void note(EventKind kind, String detail) {
          told.add(kind.word() + ": " + detail);
        }

        @Override
        public void begin(EventKind kind, String detail) {
          told.add("begin " + kind.word() + ": " + detail);
        }

        @Override
        public void end(EventKind kind) {
          told.add("end " + kind.word());
        }
      };

  private BadgeDesk desk = new BadgeDesk(reader, () -> TABLE::get, booth, clock);

  private static BoothLogException locked() {
    return assertThrows(
        BoothLogException.class, () -> BoothLogReader.open(Path.of("no-such-log.db")));
  }

  private List<String> after(String... swiped) {
    told.clear();
    codes.addAll(List.of(swiped));
    for (int i = 0; i <= swiped.length; i++) {
      assertTrue(desk.step());
    }
    return List.copyOf(told);
  }

  @Test
  void shouldSignInWhoeverTheBadgeIs() {
    assertEquals(List.of("sign in T-04"), after("0004711"));
    assertEquals(List.of("sign in T-11"), after("0004712"));
  }

  @Test
  void shouldChangeNothingWhenTheSameBadgeComesAgain() {
    after("0004711");
    assertEquals(List.of(), after("0004711", "0004711"));
  }

  @Test
  void shouldSignOutByABadgeMadeForIt() {
    after("0004711");
    assertEquals(List.of("sign in "), after("0009999"));
    assertEquals(List.of(), after("0009999"));
  }

  @Test
  void shouldRefuseAnUnknownBadgeAndNeverWriteItDown() {
    after("0004711");
    assertEquals(List.of("refuse", "unknown badge: 7 characters, ends in 23"), after("8765423"));
    assertEquals("T-04", signedIn);
  }

  @Test
  void shouldTellOnceOfABadgeThatLiesOnTheReader() {
    after("8765423");
    clock.advanceMillis(9_000);
    assertEquals(List.of("refuse"), after("8765423"));
    clock.advanceMillis(2_000);
    assertEquals(2, after("8765423").size());
    assertEquals(2, after("1165423").size());
  }

  @Test
  void shouldShortenCodes() {
    assertEquals("1 character", BadgeDesk.shortened("7"));
    assertEquals("5 characters", BadgeDesk.shortened("12345"));
    assertEquals("6 characters, ends in 56", BadgeDesk.shortened("123456"));
  }

  @Test
  void shouldWaitForALogThatIsLockedAndWriteTheLastBadgeOnly() {
    logIsLocked = true;
    assertEquals(List.of(), after("0004711", "0004712"));
    logIsLocked = false;
    assertEquals(List.of(), after());
    clock.advanceMillis(1_000);
    assertEquals(List.of("sign in T-11"), after());
    clock.advanceMillis(5_000);
    assertEquals(List.of(), after());
  }

  @Test
  void shouldRefuseEveryBadgeWhileTheTableCannotBeRead() {
    Path table = Path.of("no-such-badges.toml");
    desk = new BadgeDesk(reader, () -> BadgeTableFile.read(table)::traineeOf, booth, clock);
    List<String> said = after("0004711");
    assertEquals("refuse", said.get(0));
    assertTrue(said.get(1).contains("the table of badges cannot be read"), said::toString);
  }

  @Test
  void shouldTellHowLongTheReaderWasAway() {
    failure =
        new SourceException(SourceException.Reason.MISSING, "/dev/x", "no such port", "plug it in");
    assertEquals(List.of("begin badge reader lost: no such port"), after());
    assertEquals(List.of(), after());
    failure = null;
    assertEquals(List.of("end badge reader lost"), after());
  }

  @Test
  void shouldEndWhatItBeganAndGiveTheReaderBack() {
    failure =
        new SourceException(SourceException.Reason.MISSING, "/dev/x", "no such port", "plug it in");
    after();
    told.clear();
    desk.close();
    assertEquals(List.of("end badge reader lost"), told);
    assertTrue(closed);
  }
}
