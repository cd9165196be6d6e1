package coldround.field.edge;

import coldround.field.Judgement;
import coldround.field.VisitTag;
import coldround.field.VisitTaking;
import coldround.field.edge.VisitRecording.Recorded;
import coldround.http.Attempts;
import coldround.http.Problem;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;

/** Visits from a form that a person fills in. */
@ApplicationScoped
class VisitDesk implements VisitTaking {

  private final VisitRecording recording;
  private final Attempts attempts;

  @Inject
  VisitDesk(VisitRecording recording, Attempts attempts) {
    this.recording = recording;
    this.attempts = attempts;
  }

  @Override
  public Optional<Taken> stored(String unitId, String number) {
    return recording.stored(unitId, number).map(VisitDesk::taken);
  }

  @Override
  public Taken take(Sending sending) {
    return taken(attempts.inTransaction(() -> record(sending)));
  }

  private Recorded record(Sending sending) {
    recording.lock(sending.unitId());
    String current =
        recording
            .stored(sending.unitId(), sending.visit().number().strip())
            .map(stored -> VisitTag.of(stored.visit()))
            .orElse("");
    if (!current.equals(sending.seen())) {
      throw new Problem(
          412,
          "changed",
          "This is not as it was",
          "Somebody else has changed this visit. Look at it again, then decide.",
          List.of());
    }
    return recording.record(sending.unitId(), sending.visit(), sending.emptied(), understood -> {});
  }

  @Override
  public Judgement tried(Sending sending) {
    return recording.tried(sending.unitId(), sending.visit(), sending.emptied());
  }

  private static Taken taken(Recorded recorded) {
    return new Taken(recorded.visit(), VisitTag.of(recorded.visit()), recorded.judgement());
  }
}
