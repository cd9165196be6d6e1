package coldround.benchmark;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;

/** A {@link BareServer} in a process of its own that gives the bytes of one answer. */
final class Floor implements AutoCloseable {

  private final Process process;
  private final int port;

  private Floor(Process process, int port) {
    this.process = process;
    this.port = port;
  }

  /**
   * @param folder for the bytes
   */
  static Floor of(HttpResponse<byte[]> answer, Path folder)
      throws IOException, InterruptedException {
    Path file = folder.resolve("bytes");
    Files.write(file, answer.body());
    int port = Service.freePort();
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                BareServer.class.getProtectionDomain().getCodeSource().getLocation().getPath()
                    + ":target/quarkus-app/lib/main/*",
                BareServer.class.getName(),
                Integer.toString(port),
                file.toString(),
                answer.headers().firstValue("ETag").orElse("none"))
            .inheritIO()
            .start();
    Floor floor = new Floor(process, port);
    while (!floor.listens()) {
      if (!process.isAlive()) {
        throw new IOException("the bare server did not start");
      }
      Thread.sleep(100);
    }
    return floor;
  }

  private boolean listens() {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      return socket.isConnected();
    } catch (IOException notYet) {
      return false;
    }
  }

  URI address() {
    return URI.create("http://127.0.0.1:" + port + "/");
  }

  @Override
  public void close() {
    process.destroy();
  }
}
