package coldround;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Everything that the service logs down to DEBUG, from when it is made until it is closed. */
public final class Logged implements AutoCloseable {

  /** Of the service; the client of the tests writes down what it sends. */
  private static final List<Logger> LOGGERS =
      Stream.of("coldround", "io.quarkus", "io.vertx", "org.hibernate", "org.jboss", "io.agroal")
          .map(Logger::getLogger)
          .toList();

  private final Queue<String> lines = new ConcurrentLinkedQueue<>();
  private final Queue<String> traces = new ConcurrentLinkedQueue<>();

  private final Handler listening =
      new Handler() {
        @Override
        public void publish(LogRecord entry) {
          StringWriter text = new StringWriter();
          text.append(entry.getLoggerName()).append(' ').append(entry.getMessage());
          if (entry.getParameters() != null) {
            for (Object parameter : entry.getParameters()) {
              text.append(' ').append(String.valueOf(parameter));
            }
          }
          if (entry.getThrown() != null) {
            entry.getThrown().printStackTrace(new PrintWriter(text, true));
          }
          lines.add(text.toString());
          if (entry.getThrown() != null && entry.getLevel().intValue() >= Level.INFO.intValue()) {
            traces.add(text.toString());
          }
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
      };

  public Logged() {
    listening.setLevel(Level.ALL);
    for (Logger logger : LOGGERS) {
      logger.setLevel(Level.FINE);
      logger.addHandler(listening);
      logger.setUseParentHandlers(false);
    }
  }

  public boolean tells(String text) {
    return lines.stream().anyMatch(line -> line.contains(text));
  }

  /** Beginnings of the lines that hold one of the secrets, without the secret. */
  public List<String> giveAway(List<String> secrets) {
    return giveAway(secrets.stream().map(Pattern::quote).collect(Collectors.joining("|")));
  }

  /**
   * @param secrets a regular expression
   */
  public List<String> giveAway(String secrets) {
    Pattern found = Pattern.compile(secrets);
    return lines.stream()
        .filter(line -> found.matcher(line).find())
        .map(line -> line.substring(0, Math.min(60, line.length())))
        .distinct()
        .toList();
  }

  /** What came with a stack trace, at INFO and above. */
  public List<String> traces() {
    return List.copyOf(traces);
  }

  @Override
  public void close() {
    for (Logger logger : LOGGERS) {
      logger.setUseParentHandlers(true);
      logger.removeHandler(listening);
      logger.setLevel(null);
    }
  }
}
