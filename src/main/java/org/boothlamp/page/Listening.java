package org.boothlamp.page;

import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsParameters;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.net.BindException;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;

/** Opens the socket of a page, with TLS 1.2 or newer if there is a certificate. */
final class Listening {

  private static final int BACKLOG = 64;

  private Listening() {}

  static HttpServer at(PageOptions options) {
    String where =
        options.address().getAddress().getHostAddress() + ":" + options.address().getPort();
    try {
      if (!options.isSecure()) {
        return HttpServer.create(options.address(), BACKLOG);
      }
      SSLContext context = PemFiles.context(options.certificate(), options.certificateKey());
      HttpsServer server = HttpsServer.create(options.address(), BACKLOG);
      server.setHttpsConfigurator(new NewTlsOnly(context));
      return server;
    } catch (BindException taken) {
      throw new PageStartException(
          "the page cannot listen at " + where + " (" + taken.getMessage() + ")",
          "end the other program, or correct page.address and page.port in booth.toml",
          taken);
    } catch (IOException failure) {
      throw new PageStartException(
          "the page cannot listen at " + where + " (" + failure + ")",
          "look at the network of this computer",
          failure);
    }
  }

  private static final class NewTlsOnly extends HttpsConfigurator {

    NewTlsOnly(SSLContext context) {
      super(context);
    }

    @Override
    public void configure(HttpsParameters parameters) {
      SSLParameters tls = getSSLContext().getDefaultSSLParameters();
      tls.setProtocols(new String[] {"TLSv1.3", "TLSv1.2"});
      parameters.setSSLParameters(tls);
    }
  }
}
