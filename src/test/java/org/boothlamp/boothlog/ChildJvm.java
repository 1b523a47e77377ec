package org.boothlamp.boothlog;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Another process on the class path of the tests. */
final class ChildJvm {

  private ChildJvm() {}

  static Process start(Class<?> main, Object... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx96m", "-XX:TieredStopAtLevel=1", "-cp"));
    command.add(System.getProperty("java.class.path"));
    command.add(main.getName());
    for (Object argument : arguments) {
      command.add(argument.toString());
    }
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
  }
}
