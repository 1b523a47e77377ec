package org.boothlamp.acquisition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Compiles the front end's firmware with the compilers of this machine; never goes without. */
final class FirmwareBuild {

  private static final Path SOURCES = Path.of("hardware-notes", "front-end");
  private static final List<String> STRICT =
      List.of("-Wall", "-Wextra", "-Werror", "-fno-exceptions", "-fno-rtti");

  private static final String NEEDED =
      "the firmware's tests need these Debian packages: apt-get install --no-install-recommends "
          + "g++ gcc-avr avr-libc libsimavr-dev libelf-dev";

  private FirmwareBuild() {}

  /** A program for this machine from the C++ files of these folders of the firmware. */
  static Path forThisMachine(Path program, List<String> options, String... folders)
      throws IOException {
    List<String> command = new ArrayList<>(List.of("g++", "-std=c++17", "-Wconversion"));
    compile(command, program, options, folders);
    return program;
  }

  /** The whole firmware as the board's README says it is built. */
  static Path forTheBoard(Path program) throws IOException {
    List<String> command =
        new ArrayList<>(List.of("avr-g++", "-std=gnu++1z", "-mmcu=atmega328p", "-Os"));
    command.addAll(List.of("-DF_CPU=16000000UL", "-fno-threadsafe-statics"));
    List<String> options = List.of("-ffunction-sections", "-fdata-sections", "-Wl,--gc-sections");
    compile(command, program, options, "core", "board");
    return program;
  }

  private static void compile(
      List<String> command, Path program, List<String> options, String... folders)
      throws IOException {
    command.addAll(STRICT);
    for (String folder : folders) {
      command.addAll(cppFiles(SOURCES.resolve(folder)));
    }
    // Libraries among the options must stand behind the files that need them.
    command.addAll(options);
    command.addAll(List.of("-o", program.toString()));
    runOf(command);
  }

  private static List<String> cppFiles(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(Path::toString).filter(name -> name.endsWith(".cpp")).sorted().toList();
    }
  }

  /** Runs a command to its end and gives back what it printed; fails if it fails. */
  static String runOf(List<String> command) throws IOException {
    Process process = start(command);
    String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    int exitCode = process.onExit().join().exitValue();
    assertEquals(0, exitCode, () -> command + "\n" + printed + "\n" + NEEDED);
    return printed;
  }

  private static Process start(List<String> command) {
    try {
      return new ProcessBuilder(command).redirectErrorStream(true).start();
    } catch (IOException missing) {
      return fail("cannot start " + command.get(0) + "; " + NEEDED, missing);
    }
  }
}
