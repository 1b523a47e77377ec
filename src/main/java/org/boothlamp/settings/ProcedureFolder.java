package org.boothlamp.settings;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The procedures of a folder, as they were when it was read. A file that is refused does not keep a
 * trainee from welding to another one: it is among {@link #problems()}. Immutable.
 */
public final class ProcedureFolder {

  private final Path folder;
  private final Map<String, List<LoadedProcedure>> byId;
  private final List<Problem> problems;

  private ProcedureFolder(
      Path folder, Map<String, List<LoadedProcedure>> byId, List<Problem> problems) {
    this.folder = folder;
    this.byId = byId;
    this.problems = List.copyOf(problems);
  }

  /**
   * Reads every {@code *.toml} file of a folder, except hidden ones; not its sub-folders.
   *
   * @throws SettingsException if the folder itself cannot be read
   */
  public static ProcedureFolder read(Path folder) {
    Map<String, List<LoadedProcedure>> byId = new TreeMap<>();
    List<Problem> problems = new ArrayList<>();
    for (Path file : files(folder)) {
      readFile(file, byId, problems);
    }
    byId.values().forEach(same -> addDuplicates(same, problems));
    return new ProcedureFolder(folder, byId, problems);
  }

  private static void readFile(
      Path file, Map<String, List<LoadedProcedure>> byId, List<Problem> problems) {
    try {
      LoadedProcedure loaded = ProcedureFile.read(file);
      byId.computeIfAbsent(loaded.procedure().id(), id -> new ArrayList<>()).add(loaded);
    } catch (SettingsException refused) {
      problems.addAll(refused.problems());
    }
  }

  private static List<Path> files(Path folder) {
    Problems problems = new Problems(folder);
    if (!Files.isDirectory(folder)) {
      problems.addWholeFile(
          "must be a folder with procedure files, but is "
              + (Files.exists(folder) ? "a file" : "not there"),
          "create it, or correct procedures.folder in booth.toml");
      throw problems.refusal();
    }
    try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder, "[!.]*.toml")) {
      List<Path> files = new ArrayList<>();
      entries.forEach(files::add);
      files.sort(null);
      return files;
    } catch (IOException | DirectoryIteratorException failed) {
      problems.addWholeFile("cannot be read: " + failed, "check who may read it, and the disk");
      throw problems.refusal();
    }
  }

  private static void addDuplicates(List<LoadedProcedure> same, List<Problem> problems) {
    LoadedProcedure first = same.get(0);
    for (LoadedProcedure other : same.subList(1, same.size())) {
      problems.add(
          new Problem(
              other.file(),
              Problem.WHOLE_FILE,
              "id",
              "must be given to one procedure only, but "
                  + Literal.of(first.procedure().id())
                  + " is also in "
                  + first.file(),
              "change the id in one of the two files, or remove one"));
    }
  }

  /** All procedures, sorted by id; two with the same id stand one after the other. */
  public List<LoadedProcedure> list() {
    return byId.values().stream().flatMap(List::stream).toList();
  }

  /** What is wrong with the files; empty if nothing is. */
  public List<Problem> problems() {
    return problems;
  }

  /**
   * The procedure with an id.
   *
   * @throws SettingsException if no procedure has it, or if two have it
   */
  public LoadedProcedure find(String id) {
    List<LoadedProcedure> found = byId.getOrDefault(id, List.of());
    if (found.isEmpty()) {
      throw noSuchProcedure(id);
    }
    if (found.size() > 1) {
      List<Problem> duplicates = new ArrayList<>();
      addDuplicates(found, duplicates);
      throw new SettingsException(duplicates);
    }
    return found.get(0);
  }

  /** The id first, and then the refused files, as the id may stand in one of them. */
  private SettingsException noSuchProcedure(String id) {
    String hint = Nearest.hint(id, byId.keySet());
    String known = byId.isEmpty() ? "" : " Known here: " + String.join(", ", byId.keySet()) + ".";
    String nextMove = (hint.isEmpty() ? "check the id, or put its file there." : hint) + known;
    List<Problem> all = new ArrayList<>();
    all.add(
        new Problem(
            folder,
            Problem.WHOLE_FILE,
            "",
            "no procedure in this folder has the id " + Literal.of(id),
            nextMove));
    all.addAll(problems);
    return new SettingsException(all);
  }
}
