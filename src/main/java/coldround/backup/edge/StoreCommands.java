package coldround.backup.edge;

import coldround.backup.BadBackup;
import coldround.backup.Manifest;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** Backup and restore by a command, without a running service. */
public final class StoreCommands {

  private static final String FILE = "coldround.mv.db";

  private final Optional<Path> data;
  private final Function<Optional<Path>, Login> logins;
  private final Consumer<String> told;
  private final ObjectMapper json = JsonMapper.builder().addModule(new JavaTimeModule()).build();

  /** How the database is reached. */
  public record Login(String url, String user, String password) {
    Connection open() throws SQLException {
      return DriverManager.getConnection(url, user, password);
    }
  }

  /**
   * @param data folder of the embedded database; empty where the database is a server
   * @param logins how it is reached when it lies in another folder
   * @param told gets a sentence for each cell of a backup that the database cannot keep as it was
   */
  public StoreCommands(
      Optional<Path> data, Function<Optional<Path>, Login> logins, Consumer<String> told) {
    this.data = data;
    this.logins = logins;
    this.told = told;
  }

  /**
   * Writes a backup of the store; the file is there only once it is whole.
   *
   * @throws BadBackup when it cannot, saying why
   */
  public Manifest backup(Path to) {
    Path file = to.toAbsolutePath();
    if (Files.exists(file)) {
      throw new BadBackup(file + " is there already and is not overwritten. Name another file.");
    }
    if (!Files.isDirectory(file.getParent())) {
      throw new BadBackup("There is no folder " + file.getParent() + ". Make it, or name another.");
    }
    data.ifPresent(StoreCommands::mayBeUsed);
    Path part = file.resolveSibling(file.getFileName() + ".part");
    try {
      Manifest manifest = write(part);
      Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
      return manifest;
    } catch (IOException e) {
      throw new BadBackup("The backup cannot be written to " + file + ": " + why(e), e);
    } catch (SQLException e) {
      throw away(e);
    } finally {
      part.toFile().delete();
    }
  }

  private Manifest write(Path part) throws IOException, SQLException {
    try (Connection connection = logins.apply(data).open();
        OutputStream out = new BufferedOutputStream(Files.newOutputStream(part))) {
      return new BackupWriting(json).write(connection, Instant.now(), out);
    }
  }

  private static void mayBeUsed(Path folder) {
    Path store = folder.resolve(FILE);
    if (!Files.exists(store)) {
      throw new BadBackup("There is no store in " + folder + "; COLDROUND_DATA names its folder.");
    }
    if (isHeld(store)) {
      throw new BadBackup(
          "The store in "
              + folder
              + " is in use. Stop the service first; a backup the running one gives as well: GET"
              + " /api/v1/backup.");
    }
  }

  private static String why(IOException e) {
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  private static BadBackup away(SQLException e) {
    return new BadBackup("The database cannot be used: " + e.getMessage(), e);
  }

  /**
   * Puts a backup into a store that nobody has used yet; should it fail, there is none as before.
   *
   * @throws BadBackup when it cannot, saying why
   */
  public Manifest restore(Path from) {
    try (BackupFile file = BackupFile.open(from.toAbsolutePath(), json);
        Migrations migrations = new Migrations()) {
      int schema = file.manifest().schema();
      if (schema > migrations.newest()) {
        throw new BadBackup(
            "The backup is of schema version %d, this program knows %d. Restore it with the version that made it, or a newer one."
                .formatted(schema, migrations.newest()));
      }
      if (data.isPresent()) {
        intoFolder(data.get(), file, migrations);
      } else {
        intoServer(logins.apply(data), file, migrations);
      }
      return file.manifest();
    } catch (IOException e) {
      throw new BadBackup("The backup cannot be restored: " + why(e), e);
    } catch (SQLException e) {
      throw away(e);
    }
  }

  /**
   * Says in the feed that the store was taken back to an earlier moment by other means than {@link
   * #restore}, so that no reader takes new changes for those that it knows.
   *
   * @throws BadBackup when it cannot, saying why
   */
  public void restored() {
    data.ifPresent(StoreCommands::mayBeUsed);
    try (Migrations migrations = new Migrations()) {
      Login login = logins.apply(data);
      try (Connection connection = login.open()) {
        if (new Schema(connection).version() == 0) {
          throw new BadBackup("There is no store in the database " + login.url() + ".");
        }
      }
      migrations.upTo(migrations.newest(), login.url(), login.user(), login.password());
      mark(login, null);
    } catch (IOException e) {
      throw new BadBackup("The feed cannot be marked: " + why(e), e);
    } catch (SQLException e) {
      throw away(e);
    }
  }

  private void mark(Login login, Instant made) throws SQLException {
    try (Connection connection = login.open()) {
      FeedRestored.mark(connection, json, made, Instant.now());
    }
  }

  /** Beside its place first, so that there is a whole store or none. */
  private void intoFolder(Path folder, BackupFile file, Migrations migrations)
      throws IOException, SQLException {
    Path store = folder.resolve(FILE);
    if (Files.exists(store)) {
      throw new BadBackup(
          isHeld(store)
              ? "The store in %s is in use and is not overwritten. Stop the service and name another folder by COLDROUND_DATA."
                  .formatted(folder)
              : "There is a store in %s and it is not overwritten. Move it away, or name another folder by COLDROUND_DATA."
                  .formatted(folder));
    }
    Files.createDirectories(folder);
    Path beside = Files.createTempDirectory(folder, "restoring");
    try {
      Login login = logins.apply(Optional.of(beside));
      fill(login, file, migrations);
      Files.move(beside.resolve(FILE), store, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(beside.resolve(FILE));
      Files.deleteIfExists(beside.resolve("coldround.trace.db"));
      Files.delete(beside);
    }
  }

  private void intoServer(Login login, BackupFile file, Migrations migrations)
      throws IOException, SQLException {
    try (Connection connection = login.open()) {
      Schema schema = new Schema(connection);
      // every service that has started on a store has made the planner's account
      boolean used = schema.version() > 0 ? schema.rows("account") > 0 : !schema.tables().isEmpty();
      if (used) {
        throw new BadBackup(
            "The database "
                + login.url()
                + " holds a store, or something else, and is not overwritten. Make an empty one.");
      }
    }
    fill(login, file, migrations);
  }

  private void fill(Login login, BackupFile file, Migrations migrations)
      throws IOException, SQLException {
    migrations.upTo(file.manifest().schema(), login.url(), login.user(), login.password());
    try (Connection connection = login.open()) {
      int reached = new Schema(connection).version();
      if (reached != file.manifest().schema()) {
        throw new BadBackup(
            "The database has schema version %d, the backup is of %d. Make an empty database."
                .formatted(reached, file.manifest().schema()));
      }
      new Restoring(file, json, told).into(connection);
    }
    migrations.upTo(migrations.newest(), login.url(), login.user(), login.password());
    mark(login, file.manifest().made());
  }

  private static boolean isHeld(Path store) {
    try (FileChannel channel = FileChannel.open(store, StandardOpenOption.WRITE);
        FileLock lock = channel.tryLock()) {
      return lock == null;
    } catch (OverlappingFileLockException e) {
      return true;
    } catch (IOException e) {
      throw new BadBackup(store + " cannot be opened: " + why(e), e);
    }
  }
}
