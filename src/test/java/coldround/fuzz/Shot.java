package coldround.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * One request as it goes over the wire.
 *
 * @param call id of the call in the description that it was made from
 * @param target path and query, escaped already
 * @param headers lines without their ends
 * @param body null for none
 */
record Shot(
    int number, String call, String method, String target, List<String> headers, byte[] body) {

  private static final int TOLD = 1500;

  byte[] head() {
    StringBuilder head = new StringBuilder(method).append(' ').append(target).append(" HTTP/1.1");
    headers.forEach(line -> head.append("\r\n").append(line));
    if (body != null) {
      head.append("\r\nContent-Length: ").append(body.length);
    }
    return head.append("\r\n\r\n").toString().getBytes(StandardCharsets.UTF_8);
  }

  boolean shows(String token) {
    return headers.contains("Authorization: Bearer " + token);
  }

  boolean wantsNoBody() {
    return method.equals("HEAD");
  }

  /** So that it can be sent again by hand; without the token. */
  @Override
  public String toString() {
    StringBuilder told = new StringBuilder("#" + number + " " + call + ": ");
    told.append(method).append(' ').append(target);
    headers.stream()
        .filter(line -> !line.startsWith("Authorization"))
        .forEach(line -> told.append("\n  ").append(line));
    if (body != null) {
      told.append("\n  ").append(body.length).append(" bytes: ");
      told.append(new String(body, StandardCharsets.UTF_8));
    }
    String text = told.toString().replaceAll("[\\p{Cntrl}&&[^\\n]]", "?");
    return text.length() > TOLD ? text.substring(0, TOLD) + "…" : text;
  }
}
