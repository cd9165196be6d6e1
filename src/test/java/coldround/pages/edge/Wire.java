package coldround.pages.edge;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URL;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A line between browser and service that can be cut, for the page and for what works beside it.
 */
final class Wire implements AutoCloseable {

  private final ServerSocket entrance;
  private final URL service;
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();
  private volatile boolean cut;

  Wire(URL service) throws IOException {
    this.service = service;
    this.entrance = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    start(this::listen);
  }

  /** Address of the service at this end of the line. */
  String home() {
    return "http://localhost:" + entrance.getLocalPort() + "/";
  }

  void cut(boolean off) {
    cut = off;
    if (off) {
      open.forEach(Wire::hangUp);
    }
  }

  private void listen() {
    while (!entrance.isClosed()) {
      try {
        Socket caller = entrance.accept();
        if (cut) {
          hangUp(caller);
        } else {
          connect(caller);
        }
      } catch (IOException closed) {
        // told by the loop, or by the caller who gets no answer
      }
    }
  }

  private void connect(Socket caller) throws IOException {
    Socket called = new Socket(service.getHost(), service.getPort());
    open.add(caller);
    open.add(called);
    start(() -> carry(caller, called));
    start(() -> carry(called, caller));
  }

  private void carry(Socket from, Socket to) {
    try (InputStream in = from.getInputStream();
        OutputStream out = to.getOutputStream()) {
      in.transferTo(out);
    } catch (IOException hungUp) {
      // the other direction ends too
    } finally {
      hangUp(from);
      hangUp(to);
      open.remove(from);
      open.remove(to);
    }
  }

  private static void hangUp(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static void start(Runnable work) {
    Thread thread = new Thread(work, "wire");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() throws IOException {
    entrance.close();
    cut(true);
  }
}
