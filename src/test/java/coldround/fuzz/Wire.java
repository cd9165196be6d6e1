package coldround.fuzz;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.zip.GZIPInputStream;

/**
 * One connection that sends what no decent client would, and reads answers of HTTP/1.1 (RFC 9112).
 */
final class Wire implements AutoCloseable {

  /** A call that hangs must not hang the run. */
  private static final int LONGEST_MILLIS = 120_000;

  private static final int LONGEST_LINE = 1 << 16;

  /**
   * @param millis from the first byte sent to the last one read
   */
  record Answer(int status, Map<String, String> headers, byte[] body, long millis) {
    String text() {
      return new String(body, StandardCharsets.UTF_8);
    }

    /** A wild Accept-Encoding with a star in it takes whatever coding the server likes. */
    private static byte[] plain(byte[] body, Map<String, String> headers) throws IOException {
      if (body.length == 0 || !"gzip".equalsIgnoreCase(headers.get("content-encoding"))) {
        return body;
      }
      try (InputStream packed = new GZIPInputStream(new ByteArrayInputStream(body))) {
        return packed.readAllBytes();
      }
    }
  }

  private final String host;
  private final int port;
  private Socket socket;
  private InputStream in;

  Wire(String host, int port) {
    this.host = host;
    this.port = port;
  }

  /**
   * @throws IOException when there is no answer, or one that is no HTTP
   */
  Answer send(Shot shot) throws IOException {
    boolean fresh = socket == null;
    try {
      return once(shot);
    } catch (IOException e) {
      close();
      // a connection that has been idle, or was closed behind the last answer, may end at any time
      if (fresh) {
        throw e;
      }
      return once(shot);
    }
  }

  private Answer once(Shot shot) throws IOException {
    if (socket == null) {
      socket = new Socket(host, port);
      socket.setTcpNoDelay(true);
      socket.setSoTimeout(LONGEST_MILLIS);
      in = new BufferedInputStream(socket.getInputStream());
    }
    long begun = System.nanoTime();
    IOException refused = null;
    try {
      socket.getOutputStream().write(shot.head());
      if (shot.body() != null) {
        socket.getOutputStream().write(shot.body());
      }
      socket.getOutputStream().flush();
    } catch (IOException e) {
      // it may have answered before it had read all
      refused = e;
    }
    try {
      return read(shot, begun);
    } catch (IOException e) {
      if (refused != null) {
        e.addSuppressed(refused);
      }
      throw e;
    }
  }

  private Answer read(Shot shot, long begun) throws IOException {
    int status;
    Map<String, String> headers;
    do {
      String[] first = line().split(" ", 3);
      if (!first[0].startsWith("HTTP/1.")) {
        throw new IOException("this is no HTTP: " + first[0]);
      }
      status = Integer.parseInt(first[1]);
      headers = headers();
    } while (status < 200);
    byte[] body = new byte[0];
    boolean ends = "close".equalsIgnoreCase(headers.get("connection"));
    if (!shot.wantsNoBody() && status != 204 && status != 304) {
      if ("chunked".equalsIgnoreCase(headers.get("transfer-encoding"))) {
        body = chunks();
      } else if (headers.containsKey("content-length")) {
        body = exactly(Integer.parseInt(headers.get("content-length")));
      } else {
        body = in.readAllBytes();
        ends = true;
      }
    }
    long millis = (System.nanoTime() - begun) / 1_000_000;
    if (ends || shot.method().equals("CONNECT") || status == 413) {
      close();
    }
    return new Answer(status, headers, Answer.plain(body, headers), millis);
  }

  private Map<String, String> headers() throws IOException {
    Map<String, String> headers = new LinkedHashMap<>();
    for (String line = line(); !line.isEmpty(); line = line()) {
      int colon = line.indexOf(':');
      if (colon < 1) {
        throw new IOException("this is no header: " + line);
      }
      headers.put(
          line.substring(0, colon).toLowerCase(Locale.ROOT), line.substring(colon + 1).strip());
    }
    return headers;
  }

  private byte[] chunks() throws IOException {
    java.io.ByteArrayOutputStream all = new java.io.ByteArrayOutputStream();
    while (true) {
      int size = Integer.parseInt(line().split(";")[0].strip(), 16);
      all.write(exactly(size));
      if (size == 0) {
        headers();
        return all.toByteArray();
      }
      line();
    }
  }

  private byte[] exactly(int size) throws IOException {
    byte[] bytes = in.readNBytes(size);
    if (bytes.length < size) {
      throw new EOFException("the answer ends after " + bytes.length + " of " + size + " bytes");
    }
    return bytes;
  }

  private String line() throws IOException {
    StringBuilder line = new StringBuilder();
    for (int c = in.read(); c != '\n'; c = in.read()) {
      if (c < 0) {
        throw new EOFException("the connection was closed without an answer");
      }
      if (line.length() > LONGEST_LINE) {
        throw new IOException("a line that does not end");
      }
      if (c != '\r') {
        line.append((char) c);
      }
    }
    return line.toString();
  }

  @Override
  public void close() throws IOException {
    if (socket != null) {
      socket.close();
      socket = null;
    }
  }
}
