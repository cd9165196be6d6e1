package coldround.rounds.edge;

import coldround.rounds.Standing;
import coldround.rounds.Standing.State;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;

@Entity
@Table(name = "round_plan")
class RoundPlanRow {

  // some missed beats: a slow machine is no dead one
  static final Duration DEAD_AFTER = Duration.ofSeconds(20);

  @Id String id;
  String state;
  Instant requested;
  LocalDate firstDay;
  LocalDate lastDay;
  String asked;
  Instant beat;
  double share;
  int found;
  int revision;
  String message;

  /** Somebody, perhaps on another instance, is content with the best so far. */
  boolean stopAsked;

  /** How often it was taken up again. */
  int resumed;

  Hold hold() {
    return new Hold(id, revision, resumed);
  }

  /** Nobody works on it any more. */
  boolean isLeft(Instant now) {
    return beat.plus(DEAD_AFTER).isBefore(now);
  }

  State state() {
    return State.valueOf(state.toUpperCase(Locale.ROOT));
  }

  Standing standing(Instant now) {
    State stored = state();
    boolean dead = stored.open() && isLeft(now);
    return new Standing(
        id,
        dead ? State.INTERRUPTED : stored,
        requested,
        firstDay,
        lastDay,
        share,
        found,
        revision,
        message);
  }
}
