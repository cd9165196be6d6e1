package coldround.feed;

import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where web hooks may be sent. Anybody who can subscribe could otherwise make this service call
 * machines that only it can reach, so only addresses of the public internet are allowed, besides
 * what the operator lists.
 */
public final class HookAddresses {

  /**
   * Not of the public internet, by the IANA registries of special-purpose addresses for IPv4 and
   * IPv6 (RFC 6890); written from memory. Those of IPv6 that carry an address of IPv4 are among
   * them, for the inner one may be private.
   */
  private static final List<AddressBlock> SPECIAL =
      Stream.of(
              "0.0.0.0/8",
              "10.0.0.0/8",
              "100.64.0.0/10",
              "127.0.0.0/8",
              "169.254.0.0/16",
              "172.16.0.0/12",
              "192.0.0.0/24",
              "192.0.2.0/24",
              "192.88.99.0/24",
              "192.168.0.0/16",
              "198.18.0.0/15",
              "198.51.100.0/24",
              "203.0.113.0/24",
              "224.0.0.0/3")
          .map(AddressBlock::parse)
          .toList();

  private static final List<AddressBlock> PUBLIC_6 = List.of(AddressBlock.parse("2000::/3"));
  private static final List<AddressBlock> SPECIAL_6 =
      Stream.of("2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20")
          .map(AddressBlock::parse)
          .toList();

  private final List<AddressBlock> listed;

  /**
   * @param listed blocks that the operator allows although they are not public
   */
  public HookAddresses(Collection<AddressBlock> listed) {
    this.listed = List.copyOf(listed);
  }

  /** What is wrong with a URL before its name is looked up; empty for nothing. */
  public static Optional<String> fault(URI url) {
    if (!"https".equalsIgnoreCase(url.getScheme()) && !"http".equalsIgnoreCase(url.getScheme())) {
      return Optional.of("begins with https://");
    }
    if (url.getHost() == null) {
      return Optional.of("names a host, such as https://example.org/hook");
    }
    if (url.getRawUserInfo() != null || url.getRawFragment() != null) {
      return Optional.of("holds no password and no fragment");
    }
    return url.getPort() > 65535 || url.getPort() == 0
        ? Optional.of("names a port from 1 to 65535")
        : Optional.empty();
  }

  /**
   * Where to connect to, IPv4 first. Each call looks the name up: what it says can change, and it
   * is these addresses that are connected to, not the name.
   *
   * @throws Refused when the name is not known, or one of its addresses is not allowed
   */
  public List<InetAddress> resolve(URI url) throws Refused {
    InetAddress[] found;
    try {
      found = InetAddress.getAllByName(url.getHost());
    } catch (UnknownHostException e) {
      throw new Refused("the host " + url.getHost() + " is not known");
    }
    boolean open = "http".equalsIgnoreCase(url.getScheme());
    for (InetAddress address : found) {
      check(address, open);
    }
    return Arrays.stream(found)
        .sorted((a, b) -> a.getAddress().length - b.getAddress().length)
        .toList();
  }

  private void check(InetAddress address, boolean open) throws Refused {
    boolean allowed = listed.stream().anyMatch(block -> block.contains(address));
    if (!allowed && !isPublic(address)) {
      throw new Refused(
          "the host leads to "
              + address.getHostAddress()
              + ", which is no address of the public internet; the operator can list it in"
              + " coldround.hooks.allowed");
    }
    if (!allowed && open) {
      throw new Refused(
          "https:// is needed, except for addresses that the operator lists in"
              + " coldround.hooks.allowed");
    }
  }

  static boolean isPublic(InetAddress address) {
    return address.getAddress().length == 4
        ? SPECIAL.stream().noneMatch(block -> block.contains(address))
        : PUBLIC_6.stream().anyMatch(block -> block.contains(address))
            && SPECIAL_6.stream().noneMatch(block -> block.contains(address));
  }

  /** Nothing is sent there; the message is a clause about the URL. */
  public static final class Refused extends Exception {
    Refused(String message) {
      super(message);
    }
  }
}
