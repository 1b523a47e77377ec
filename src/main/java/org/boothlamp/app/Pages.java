package org.boothlamp.app;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.boothlamp.acquisition.RecordingFolder;
import org.boothlamp.monitor.Monitor;
import org.boothlamp.monitor.WallClock;
import org.boothlamp.page.BoothPage;
import org.boothlamp.page.PageOptions;
import org.boothlamp.page.Role;
import org.boothlamp.page.StatePort;
import org.boothlamp.settings.BoothSettings;
import org.boothlamp.settings.PageSettings;

/** Makes a booth's page out of its settings. */
final class Pages {

  private Pages() {}

  static BoothPage of(
      BoothSettings settings,
      OpenSource open,
      WallClock clock,
      Monitor monitor,
      Path log,
      RecordingFolder recordings) {
    return new BoothPage(
            options(settings),
            monitor.live(),
            log,
            new PageSignIns(settings, open.scale(), log, clock),
            state(open, clock, monitor),
            clock)
        .withRecordings(new BoothRawRuns(log, recordings));
  }

  private static PageOptions options(BoothSettings settings) {
    PageSettings page = settings.page();
    return new PageOptions(
        settings.boothId(),
        settings.screen().language(),
        settings.screen().units(),
        new InetSocketAddress(literal(page.address()), page.port()),
        tokenFiles(page),
        page.certificate(),
        page.certificateKey(),
        page.booths(),
        page.classViewFrom(),
        page.clients());
  }

  /** The settings have let nothing through that has to be looked up. */
  private static InetAddress literal(String address) {
    try {
      return InetAddress.getByName(address);
    } catch (UnknownHostException noLiteral) {
      throw new IllegalArgumentException("no IP address: " + address, noLiteral);
    }
  }

  private static Map<Role, Path> tokenFiles(PageSettings page) {
    Map<Role, Path> files = new EnumMap<>(Role.class);
    put(files, Role.TRAINEE, page.traineeToken());
    put(files, Role.INSTRUCTOR, page.instructorToken());
    put(files, Role.TECHNICIAN, page.technicianToken());
    return files;
  }

  private static void put(Map<Role, Path> files, Role role, Path file) {
    if (file != null) {
      files.put(role, file);
    }
  }

  private static StatePort state(OpenSource open, WallClock clock, Monitor monitor) {
    String version = Pages.class.getPackage().getImplementationVersion();
    String started =
        Instant.ofEpochMilli(clock.epochMillis())
            .atZone(ZoneId.systemDefault())
            .toLocalDateTime()
            .truncatedTo(ChronoUnit.SECONDS)
            .toString();
    return () -> {
      Map<String, String> state = new LinkedHashMap<>();
      state.put("page.state.version", version == null ? "-" : version);
      state.put("page.state.started", started);
      state.put("page.state.source", open.description());
      state.put("page.state.lost", Long.toString(monitor.status().lostEntries()));
      return state;
    };
  }
}
