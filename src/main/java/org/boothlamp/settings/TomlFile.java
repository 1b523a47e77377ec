package org.boothlamp.settings;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/** From a path to a parsed TOML document, or to a refusal that says what stands there instead. */
final class TomlFile {

  /** Far above any real file, far below what would hurt. */
  private static final int LARGEST_BYTES = 256 * 1024;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private static final String SAVE_AS_TEXT =
      "check that this is the file you meant, and save it as plain UTF-8 text";

  private final Problems problems;
  private final String whereFromInstead;

  private TomlFile(Problems problems, String whereFromInstead) {
    this.problems = problems;
    this.whereFromInstead = whereFromInstead;
  }

  /**
   * The document of a file as its outermost section.
   *
   * @param problems takes what is found wrong from here on, and names the file
   * @param whereFromInstead next move if the file is missing or empty
   * @throws SettingsException if the file cannot be read as TOML
   */
  static Section read(Problems problems, String whereFromInstead) {
    TomlFile file = new TomlFile(problems, whereFromInstead);
    file.checkKind();
    return file.parse(file.decode(file.bytes()));
  }

  private void checkKind() {
    Path path = problems.file();
    if (!Files.exists(path)) {
      problems.addWholeFile("there is no such file", whereFromInstead);
    } else if (Files.isDirectory(path)) {
      problems.addWholeFile("must be a file, but is a folder", "give a file inside it");
    } else if (!Files.isRegularFile(path)) {
      problems.addWholeFile("must be a plain file, but is a device or a pipe", whereFromInstead);
    }
    problems.throwIfAny();
  }

  private byte[] bytes() {
    try {
      long size = Files.size(problems.file());
      if (size > LARGEST_BYTES) {
        problems.addWholeFile(
            "must be at most " + LARGEST_BYTES + " bytes long, but is " + size, SAVE_AS_TEXT);
        throw problems.refusal();
      }
      return Files.readAllBytes(problems.file());
    } catch (IOException failed) {
      problems.addWholeFile("cannot be read: " + failed, "check who may read it, and the disk");
      throw problems.refusal();
    }
  }

  /** The text, without the mark that some editors put before it. */
  private String decode(byte[] bytes) {
    refuseBinary(bytes);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    CoderResult result = StandardCharsets.UTF_8.newDecoder().decode(in, out, true);
    if (result.isError()) {
      refuseByte(bytes, in.position(), "must be UTF-8 text");
    }
    String text = out.flip().toString();
    return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
  }

  private void refuseBinary(byte[] bytes) {
    for (int i = 0; i < bytes.length; i++) {
      if (bytes[i] == 0) {
        refuseByte(bytes, i, "must be text");
      }
    }
  }

  private void refuseByte(byte[] bytes, int index, String rule) {
    String found = String.format("0x%02x at byte %d", bytes[index] & 0xff, index + 1);
    problems.add(lineAt(bytes, index), "", rule + ", but holds " + found, SAVE_AS_TEXT);
    throw problems.refusal();
  }

  private static int lineAt(byte[] bytes, int index) {
    int line = 1;
    for (int i = 0; i < index; i++) {
      if (bytes[i] == '\n') {
        line++;
      }
    }
    return line;
  }

  private Section parse(String text) {
    TomlParseResult document = parsed(text);
    String[] lines = text.split("\r?\n", -1);
    for (TomlParseError error : document.errors()) {
      addSyntaxError(error, lines);
    }
    problems.throwIfAny();
    if (document.isEmpty()) {
      problems.addWholeFile("must hold settings, but is empty", whereFromInstead);
      throw problems.refusal();
    }
    return Section.ofDocument(problems, document);
  }

  /** The parser goes one call deeper with each bracket inside another. */
  private TomlParseResult parsed(String text) {
    try {
      return Toml.parse(text);
    } catch (StackOverflowError tooDeep) {
      problems.addWholeFile(
          "must be TOML, but has far too many brackets in each other", SAVE_AS_TEXT);
      throw problems.refusal();
    }
  }

  private void addSyntaxError(TomlParseError error, String[] lines) {
    int line = error.position().line();
    String written = line <= lines.length ? lines[line - 1].strip() : "";
    problems.add(
        line,
        "",
        "must be TOML, but is " + Literal.of(written) + ": " + error.getMessage(),
        nextMoveFor(error));
  }

  private static String nextMoveFor(TomlParseError error) {
    return error.getMessage().contains("previously defined")
        ? "keep one of the two"
        : "put the line right: a section is [name], a setting is name = value, text is in quotes";
  }
}
