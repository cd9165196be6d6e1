package coldround.backup.edge;

import coldround.access.Audit;
import coldround.access.Role;
import coldround.backup.Manifest;
import coldround.http.Problem;
import coldround.sheet.Scratch;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import javax.sql.DataSource;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** All that is stored in one file, while others go on working. */
@Path("/api/v1/backup")
@Tag(name = "Access")
public class BackupResource {

  private static final String ZIP = "application/zip";
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

  private final DataSource store;
  private final BackupWriting writing;
  private final Audit audit;
  private final Clock clock;

  @Inject
  BackupResource(DataSource store, ObjectMapper json, Audit audit, Clock clock) {
    this.store = store;
    this.writing = new BackupWriting(json);
    this.audit = audit;
    this.clock = clock;
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "takeBackup",
      summary =
          "All that is stored, as it is at one moment, while others go on working; the command"
              + " restore puts it into a new store on either kind of database. Whoever has it has"
              + " the secrets of web hooks")
  @APIResponse(
      responseCode = "200",
      description = "A zip with a manifest and the rows of each table, one JSON array a line",
      content =
          @Content(mediaType = ZIP, schema = @Schema(type = SchemaType.STRING, format = "binary")))
  @APIResponse(
      responseCode = "507",
      description = "no-room: the disk of the service has no room to make the file")
  public Response take() {
    Instant now = clock.instant();
    java.nio.file.Path file = made(now);
    StreamingOutput body =
        out -> {
          try {
            Files.copy(file, out);
          } finally {
            Files.deleteIfExists(file);
          }
        };
    try {
      return Response.ok(body, ZIP)
          .header("Content-Length", Files.size(file))
          .header("Cache-Control", "no-store")
          .header(
              "Content-Disposition",
              "attachment; filename=\"coldround-" + NAME.format(now) + ".zip\"")
          .build();
    } catch (IOException e) {
      throw noRoom(e);
    }
  }

  /** A file of its own first: a slow reader holds nothing up, and what is refused is so at once. */
  private java.nio.file.Path made(Instant now) {
    java.nio.file.Path file = null;
    try {
      file = Scratch.file("backup", ".zip");
      Manifest manifest;
      try (Connection connection = store.getConnection();
          OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
        manifest = writing.write(connection, now, out);
      }
      QuarkusTransaction.requiringNew().run(() -> note(manifest));
      return file;
    } catch (IOException e) {
      delete(file);
      throw noRoom(e);
    } catch (SQLException e) {
      delete(file);
      throw new IllegalStateException(e);
    } catch (RuntimeException e) {
      delete(file);
      throw e;
    }
  }

  private static void delete(java.nio.file.Path file) {
    if (file != null) {
      file.toFile().delete();
    }
  }

  /** It holds all that others may not see: that one was taken must be known. */
  private void note(Manifest manifest) {
    String became = "%d rows, schema %d".formatted(manifest.allRows(), manifest.schema());
    audit.note(Audit.Change.of("backup", manifest.made().toString(), "taken", "", became));
  }

  private static Problem noRoom(IOException e) {
    return new Problem(
        507,
        "no-room",
        "The disk has no room for this",
        "The file could not be written to the disk of the service: "
            + e.getMessage()
            + ". Make room there, then ask again.",
        List.of());
  }
}
