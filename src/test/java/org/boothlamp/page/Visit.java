package org.boothlamp.page;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.boothlamp.monitor.LiveFeed;
import org.boothlamp.procedure.Quantity;
import org.boothlamp.procedure.Window;
import org.boothlamp.words.Language;
import org.boothlamp.words.Units;

/** A page without sockets, and a browser's request to it. */
final class Visit {

  static final String HOST = "127.0.0.1:8480";
  static final long NOW_MILLIS = 1_790_000_000_000L;

  private final Site site;
  private final Map<String, String> headers = new TreeMap<>();

  Visit(Site site) {
    this.site = site;
    header("Host", HOST);
  }

  /** Options of a page on loopback that nobody has to sign on to. */
  static PageOptions open() {
    return options(Map.of(), null, List.of(), List.of());
  }

  static PageOptions options(
      Map<Role, Path> tokens, Path certificate, List<String> booths, List<String> classViewFrom) {
    return new PageOptions(
        "B-07",
        Language.ENGLISH,
        Units.METRIC,
        new InetSocketAddress(InetAddress.getLoopbackAddress(), 8_480),
        tokens,
        certificate,
        certificate,
        booths,
        classViewFrom,
        40);
  }

  /** A site over a log, with a desk that takes every sign-in. */
  static Site site(PageOptions options, Path log, SignInPort desk) {
    return new BoothPage(options, new LiveFeed(), log, desk, () -> Map.of(), () -> NOW_MILLIS)
        .site();
  }

  Visit header(String name, String value) {
    headers.put(name.toLowerCase(Locale.ROOT), value);
    return this;
  }

  Answer get(String address) {
    return send("GET", address, "");
  }

  Answer send(String method, String address, String body) {
    int question = address.indexOf('?');
    String path = question < 0 ? address : address.substring(0, question);
    String query = question < 0 ? null : address.substring(question + 1);
    Call call =
        new Call(method, path, query, name -> headers.get(name.toLowerCase(Locale.ROOT)), body);
    return site.answer(call, "192.0.2.7");
  }

  /** Fills in the form of a page as a browser does. */
  Answer post(String address, String... fields) {
    String token = formToken(get(address));
    header("Origin", "http://" + HOST);
    return send("POST", address, form(token, fields));
  }

  static String form(String token, String... fields) {
    StringBuilder form = new StringBuilder(Layout.FORM_TOKEN + "=" + token);
    for (int k = 0; k < fields.length; k += 2) {
      form.append('&').append(fields[k]).append('=');
      form.append(URLEncoder.encode(fields[k + 1], StandardCharsets.UTF_8));
    }
    return form.toString();
  }

  static String formToken(Answer page) {
    Matcher matcher =
        Pattern.compile("name=\"form_token\" value=\"([0-9a-f]*)\"").matcher(page.text());
    return matcher.find() ? matcher.group(1) : "";
  }

  /** Remembers sign-ins. */
  static final class Desk implements SignInPort {
    final List<String> done = new ArrayList<>();
    String refusal;

    @Override
    public List<Choice> choices() {
      return List.of(
          new Choice("S-3F-18", "2", "root", List.of()),
          new Choice("S-3F-18", "2", "fill", List.of(new Window(Quantity.AMPS, 95, 125))));
    }

    @Override
    public void signIn(String trainee, String procedureId, String pass) {
      if (refusal != null) {
        throw new IllegalArgumentException(refusal);
      }
      done.add(trainee + " " + procedureId + " " + pass);
    }

    @Override
    public void signOut() {
      done.add("out");
    }
  }
}
