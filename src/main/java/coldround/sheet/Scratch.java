package coldround.sheet;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Files that live for one piece of work. They bear the number of their process, so that those of a
 * process that was killed are known and can be cleared away.
 */
public final class Scratch {

  private static final String NAME = "coldround-";
  private static final Pattern OURS = Pattern.compile(NAME + "(\\d+)-.*");

  private Scratch() {}

  /**
   * A new file that only its owner may read.
   *
   * @param kind such as import
   * @param ending such as .csv
   */
  public static Path file(String kind, String ending) throws IOException {
    return Files.createTempFile(NAME + ProcessHandle.current().pid() + "-" + kind + "-", ending);
  }

  /**
   * Deletes what processes left in a folder that are no more; at the start of a process also what
   * bears its own number, which another had before it.
   *
   * @return names of what was deleted
   */
  public static List<String> clear(Path folder) throws IOException {
    List<String> deleted = new ArrayList<>();
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, NAME + "*")) {
      for (Path file : files) {
        Matcher name = OURS.matcher(file.getFileName().toString());
        if (name.matches() && isOver(name.group(1)) && Files.deleteIfExists(file)) {
          deleted.add(file.getFileName().toString());
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return deleted;
  }

  private static boolean isOver(String process) {
    long number = Long.parseLong(process);
    return number == ProcessHandle.current().pid()
        || ProcessHandle.of(number).filter(ProcessHandle::isAlive).isEmpty();
  }
}
