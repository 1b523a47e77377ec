package org.boothlamp.page;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.boothlamp.monitor.LiveFeed;
import org.boothlamp.monitor.NanoClock;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.report.BeadWords;

/** Puts a booth's page together: a list of constructions. */
public final class BoothPage {

  private final PageOptions options;
  private final LiveFeed feed;
  private final Path log;
  private final SignInPort signIns;
  private final StatePort state;
  private final WallClock clock;
  private final List<Function<Layout, View>> more = new ArrayList<>();
  private final List<Function<Layout, RunPart>> parts = new ArrayList<>();
  private RawRuns recordings = RawRuns.NONE;

  /**
   * A page of a booth.
   *
   * @param feed what its monitor sees
   * @param log file of its log; need not exist yet
   * @param clock the booth's time of day
   */
  public BoothPage(
      PageOptions options,
      LiveFeed feed,
      Path log,
      SignInPort signIns,
      StatePort state,
      WallClock clock) {
    this.options = options;
    this.feed = feed;
    this.log = log;
    this.signIns = signIns;
    this.state = state;
    this.clock = clock;
  }

  /** One more view, after the others in the menu. */
  public BoothPage with(Function<Layout, View> view) {
    more.add(view);
    return this;
  }

  /** Where the raw recordings of runs are, to zoom into and listen to. */
  public BoothPage withRecordings(RawRuns raw) {
    recordings = raw;
    return this;
  }

  /** Something more on the page of each run. */
  public BoothPage withRunPart(Function<Layout, RunPart> part) {
    parts.add(part);
    return this;
  }

  /**
   * The server, not started yet.
   *
   * @throws PageStartException if a token file cannot be used
   */
  public PageServer server() {
    Deadlines deadlines = new Deadlines(NanoClock.SYSTEM);
    LiveFrames frames = new LiveFrames(options.boothId(), feed);
    LiveStream stream = new LiveStream(frames, deadlines, NanoClock.SYSTEM, options.clients());
    return new PageServer(options, site(), stream, deadlines);
  }

  /** The answers alone, without sockets. */
  Site site() {
    Tokens tokens = tokens();
    byte[] formKey = new byte[32];
    new SecureRandom().nextBytes(formKey);
    StaticFiles files = new StaticFiles();
    Layout layout = new Layout(options, files.version());
    return new Site(
        new Gate(options, tokens, formKey, clock),
        layout,
        new SecurityHeaders(options.booths()),
        new RateLimit(5, 0.1, NanoClock.SYSTEM),
        views(layout, files));
  }

  private Tokens tokens() {
    Map<Role, String> tokens = new EnumMap<>(Role.class);
    options.tokenFiles().forEach((role, file) -> tokens.put(role, TokenFile.read(file)));
    return new Tokens(options.boothId(), tokens);
  }

  private List<View> views(Layout layout, StaticFiles files) {
    ZoneId zone = ZoneId.systemDefault();
    Today today = () -> LocalDate.ofInstant(Instant.ofEpochMilli(clock.epochMillis()), zone);
    BoothRuns runs = new BoothRuns(log, clock);
    List<View> views = new ArrayList<>();
    views.add(new LiveView(layout));
    views.add(new RunsView(layout, runs, today, zone));
    List<RunPart> runParts = new ArrayList<>(List.of(ReplayView.link(layout)));
    BeadDesk beads =
        new BeadDesk(log, zone, clock, new BeadWords(layout.phrases(), layout.units()));
    runParts.add(new BeadPart(layout, beads));
    parts.forEach(part -> runParts.add(part.apply(layout)));
    views.add(new RunView(layout, runs, zone, runParts));
    views.add(new BeadView(layout, beads));
    views.add(new ReplayView(layout, new ReplayRuns(log), recordings, zone));
    views.add(new SignInView(layout, signIns));
    more.forEach(view -> views.add(view.apply(layout)));
    views.add(new ClassView(layout, options.booths()));
    views.add(new StateView(layout, state));
    views.add(files);
    return views;
  }
}
