package coldround.intake.edge;

import coldround.access.Role;
import coldround.http.Answers;
import coldround.http.Attempts;
import coldround.http.Problem;
import coldround.intake.IntakeTables;
import coldround.intake.Profile;
import jakarta.annotation.security.RolesAllowed;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** How files of one origin are written: what is known, and what one saves oneself. */
@Path("/api/v1/profiles")
@Tag(name = "Imports")
public class ProfilesResource {

  /**
   * A profile in the list.
   *
   * @param own saved by a call, so that another call may replace it
   */
  record Line(String name, String meaning, boolean own) {}

  /** All of them; there are never so many that they would need pages. */
  record Lines(List<Line> items, String next) {}

  private static final int LONGEST = 200_000;

  private final StoredProfiles profiles;
  private final IntakeTables tables;
  private final Answers answers;
  private final Attempts attempts;

  @Inject
  ProfilesResource(
      StoredProfiles profiles, IntakeTables tables, Answers answers, Attempts attempts) {
    this.profiles = profiles;
    this.tables = tables;
    this.answers = answers;
    this.attempts = attempts;
  }

  @GET
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(operationId = "listProfiles", summary = "Names of all profiles")
  @APIResponse(
      responseCode = "200",
      description = "All profiles",
      content =
          @Content(mediaType = "application/json", schema = @Schema(implementation = Lines.class)))
  public Response list(@Context Request request) {
    List<Line> lines = new ArrayList<>();
    for (String name : profiles.names()) {
      profiles
          .find(name)
          .ifPresent(p -> lines.add(new Line(name, p.meaning(), tables.profile(name).isEmpty())));
    }
    return answers.read(new Lines(lines, null), request);
  }

  @GET
  @Path("{name}")
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(operationId = "getProfile", summary = "One profile, in the form in which it is sent")
  @APIResponse(
      responseCode = "200",
      description = "The profile",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = ProfileDocument.class)))
  public Response one(@PathParam("name") String name, @Context Request request) {
    Profile profile =
        profiles.find(name).orElseThrow(() -> Problem.notFound("profile '" + name + "'"));
    return answers.read(ProfileDocument.of(profile), request);
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @RolesAllowed(Role.PLANNER_CODE)
  @Operation(
      operationId = "saveProfile",
      summary = "Save a profile of one's own, or replace one of that name")
  @APIResponse(
      responseCode = "200",
      description = "In the place of the one before",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = ProfileDocument.class)))
  @APIResponse(
      responseCode = "201",
      description = "A new one",
      content =
          @Content(
              mediaType = "application/json",
              schema = @Schema(implementation = ProfileDocument.class)))
  @APIResponse(responseCode = "409", description = "conflict: the name belongs to the service")
  public Response save(ProfileDocument document) {
    Profile profile = checked(document);
    boolean created = attempts.inTransaction(() -> profiles.save(profile));
    return Response.status(created ? 201 : 200)
        .location(URI.create("/api/v1/profiles/" + profile.name()))
        .entity(ProfileDocument.of(profile))
        .build();
  }

  /** True for a name that nobody may save under. */
  boolean packaged(String name) {
    return name.equals("auto") || tables.profile(name).isPresent();
  }

  /** True where one of that name is there. */
  boolean known(String name) {
    return profiles.find(name).isPresent();
  }

  private Profile checked(ProfileDocument document) {
    if (document == null) {
      throw Problem.badField("", "", "send a profile as JSON, such as GET .../standard answers");
    }
    Profile profile;
    try {
      profile = document.profile();
    } catch (IllegalArgumentException | NullPointerException e) {
      String why = e.getMessage() == null ? "an entry is null" : e.getMessage();
      throw Problem.badField("profile", document.name(), why);
    }
    List<String> faults = tables.faults(profile);
    if (!faults.isEmpty()) {
      throw Problem.badFields(
          faults.stream().map(f -> new Problem.FieldError("profile", profile.name(), f)).toList());
    }
    if (packaged(profile.name())) {
      throw Problem.conflict(
          "The name '%s' belongs to the service. Save under another name."
              .formatted(profile.name()));
    }
    if (document.toString().length() > LONGEST / 2) {
      throw Problem.badField("profile", profile.name(), "is longer than a profile may be");
    }
    return profile;
  }
}
