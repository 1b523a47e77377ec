package org.boothlamp.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The section [page]. */
class PageSettingsTest {

  private static final String BOOTH = "booth.id = \"B-07\"\n[source]\nkind = \"simulated\"\n";

  @TempDir Path folder;

  private PageSettings read(String section) throws Exception {
    Path file = Files.writeString(folder.resolve("booth.toml"), BOOTH + section);
    return BoothSettingsFile.read(file).page();
  }

  @Test
  void shouldHaveNoPageUnlessAsked() throws Exception {
    assertNull(read(""));
  }

  @Test
  void shouldBeForThisComputerAloneUnlessToldOtherwise() throws Exception {
    PageSettings page = read("[page]\n");
    assertEquals("127.0.0.1", page.address());
    assertEquals(8_480, page.port());
    assertTrue(page.isLoopback());
    assertFalse(page.hasTokens());
  }

  @Test
  void shouldReadWhatATabletNeeds() throws Exception {
    PageSettings page =
        read(
            """
            [page]
            address = "0.0.0.0"
            trainee_token_file = "trainee"
            certificate = "page.pem"
            certificate_key = "/etc/page-key.pem"
            booths = ["https://b02.school.example:8480", "http://[fd00::2]:8480"]
            class_view_from = ["https://b01.school.example"]
            """);
    assertEquals(folder.resolve("trainee"), page.traineeToken());
    assertEquals(Path.of("/etc/page-key.pem"), page.certificateKey());
    assertEquals(
        List.of("https://b02.school.example:8480", "http://[fd00::2]:8480"), page.booths());
    assertFalse(page.isLoopback());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "address = \"0.0.0.0\" | is open to other computers, so that roles need tokens",
        "address = \"b02.school.example\" | an IP address such as 127.0.0.1",
        "address = \"300.0.0.1\" | an IP address such as 127.0.0.1",
        "port = 70000 | must be a whole number from 0 to 65535",
        "certificate = \"page.pem\" | must stand beside the other",
        "trainee_token = \"geheim\" | trainee_token_file",
        "booths = \"https://b02\" | must be a list of different texts in quotes",
        "booths = [\"https://b02/\"] | no / at the end",
        "booths = [\"https://b02; script-src *\"] | scheme, host and port",
        "booths = [\"https://b02\", \"https://b02\"] | list of different texts",
        "class_view_from = [\"*\"] | scheme, host and port",
        "clients = 1000 | must be a whole number from 1 to 100 screens"
      })
  void shouldRefuseWhatCannotBeMeant(String key, String why) {
    String message =
        assertThrows(SettingsException.class, () -> read("[page]\n" + key + "\n")).getMessage();
    assertTrue(message.contains(why), message);
    assertFalse(message.contains("geheim"), message);
  }
}
