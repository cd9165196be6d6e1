package coldround.feed;

import java.net.InetAddress;
import java.net.UnknownHostException;

/**
 * Addresses with the same beginning, written as 10.0.0.0/8 or fc00::/7; without a length it is one
 * address.
 */
public record AddressBlock(InetAddress first, int bits) {

  /**
   * @throws IllegalArgumentException for a text that is none; names are never looked up
   */
  public static AddressBlock parse(String text) {
    int slash = text.indexOf('/');
    String address = slash < 0 ? text : text.substring(0, slash);
    if (!address.matches("[0-9.]+|[0-9a-fA-F:.]*:[0-9a-fA-F:.]*")) {
      throw bad(text);
    }
    try {
      InetAddress first = InetAddress.getByName(address);
      int all = first.getAddress().length * 8;
      int bits = slash < 0 ? all : Integer.parseInt(text.substring(slash + 1));
      if (bits < 0 || bits > all) {
        throw bad(text);
      }
      return new AddressBlock(first, bits);
    } catch (UnknownHostException | NumberFormatException e) {
      throw bad(text);
    }
  }

  private static IllegalArgumentException bad(String text) {
    return new IllegalArgumentException(
        "'" + text + "' is no block of addresses such as 10.1.2.0/24 or fd00:1::/32");
  }

  /** True for an address of the same family that begins alike. */
  public boolean contains(InetAddress address) {
    byte[] ours = first.getAddress();
    byte[] theirs = address.getAddress();
    if (ours.length != theirs.length) {
      return false;
    }
    for (int bit = 0; bit < bits; bit++) {
      int mask = 0x80 >> bit % 8;
      if ((ours[bit / 8] & mask) != (theirs[bit / 8] & mask)) {
        return false;
      }
    }
    return true;
  }
}
