package coldround.access;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;

/** Tokens would go over the network for everybody to read: the service does not start so. */
public final class OpenDoor extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private OpenDoor(String message) {
    super(message);
  }

  /**
   * @param host that is listened on
   * @param insecure quarkus.http.insecure-requests: enabled, redirect or disabled
   * @param meant true where the operator has said that it is meant so
   * @return what to say in the log, empty where nothing is open
   * @throws OpenDoor where plain HTTP is served beyond this machine and nobody has said that it is
   *     meant
   */
  public static Optional<String> check(String host, String insecure, boolean meant) {
    if (loopback(host) || !insecure.equalsIgnoreCase("enabled")) {
      return Optional.empty();
    }
    String what =
        "quarkus.http.host="
            + host
            + " is open to other machines without TLS: tokens and readings"
            + " can be read on the way.";
    if (!meant) {
      throw new OpenDoor(
          what
              + "\nThe service does not start so. Serve TLS (quarkus.http.ssl.certificate.* and"
              + " quarkus.http.insecure-requests=redirect or disabled), or put it behind a proxy"
              + " that does and say so by coldround.plain-http=true (COLDROUND_PLAIN_HTTP=true).");
    }
    return Optional.of(what + " It was said to be meant so: coldround.plain-http=true.");
  }

  private static boolean loopback(String host) {
    try {
      return InetAddress.getByName(host).isLoopbackAddress();
    } catch (UnknownHostException e) {
      // not known to be this machine alone
      return false;
    }
  }
}
