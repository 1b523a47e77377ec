package org.boothlamp.settings;

import java.nio.file.Path;

/**
 * Where the procedures are, and which one is welded to while nobody has signed in. Immutable.
 *
 * @param folder folder with the procedure files; not checked here
 * @param defaultProcedure id; empty if none
 * @param defaultPass pass of it; empty if none, or if the procedure has only one
 */
public record ProcedureSettings(Path folder, String defaultProcedure, String defaultPass) {}
