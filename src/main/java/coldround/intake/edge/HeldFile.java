package coldround.intake.edge;

import coldround.fleet.Kind;
import coldround.intake.Mending;
import coldround.intake.Mending.Choice;
import coldround.intake.Profile;
import java.time.Instant;
import java.util.List;

/** A file between being sent and being taken: what it was taken for, and its trial. */
final class HeldFile {

  /**
   * What is to be done with the file, as it stands.
   *
   * @param run id of the trial with that profile
   * @param saved name under which the profile was kept; empty for none
   */
  record Trial(Profile profile, List<Choice> choices, String run, String saved) {}

  private final String id;
  private final String name;
  private final Kind kind;
  private final Spool file;
  private final Mending mending;
  private final Instant since;
  private Trial trial;
  private String taken = "";

  /**
   * @param name as its sender calls it
   */
  HeldFile(String id, String name, Kind kind, Spool file, Mending mending, Instant since) {
    this.id = id;
    this.name = name;
    this.kind = kind;
    this.file = file;
    this.mending = mending;
    this.since = since;
  }

  String id() {
    return id;
  }

  String name() {
    return name;
  }

  Kind kind() {
    return kind;
  }

  Spool file() {
    return file;
  }

  Mending mending() {
    return mending;
  }

  Instant since() {
    return since;
  }

  synchronized Trial trial() {
    return trial;
  }

  synchronized void tried(Trial latest) {
    trial = latest;
  }

  /** Id of the import that takes it; empty before. */
  synchronized String taken() {
    return taken;
  }

  synchronized void takenBy(String run) {
    taken = run;
  }
}
