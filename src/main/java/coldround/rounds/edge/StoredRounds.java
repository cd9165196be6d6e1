package coldround.rounds.edge;

import coldround.access.Audit;
import coldround.feed.Change;
import coldround.feed.Outbox;
import coldround.http.Problem;
import coldround.rounds.RoundPlan;
import coldround.rounds.Rounds;
import coldround.rounds.Standing;
import coldround.rounds.Standing.State;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** Plans in the store: a row that says how a plan stands, and the plan as one packed document. */
@ApplicationScoped
class StoredRounds {

  private static final int PIECE = 500_000;
  private static final int MOST_RESUMED = 3;

  /** One that was interrupted longer ago is not wanted any more. */
  private static final Duration RECENT = Duration.ofDays(1);

  private final EntityManager entities;
  private final ObjectMapper json;
  private final Outbox outbox;
  private final RoundSites sites;
  private final Audit audit;
  private final Clock clock;

  @Inject
  StoredRounds(
      EntityManager entities,
      ObjectMapper json,
      Outbox outbox,
      RoundSites sites,
      Audit audit,
      Clock clock) {
    this.entities = entities;
    this.json = json;
    this.outbox = outbox;
    this.sites = sites;
    this.audit = audit;
    this.clock = clock;
  }

  @Transactional
  void begin(String id, RoundRequest asked) {
    RoundPlanRow row = new RoundPlanRow();
    row.id = id;
    row.requested = clock.instant();
    row.firstDay = asked.from();
    row.lastDay = asked.to();
    row.asked = text(asked);
    row.message = "";
    stand(row, State.WAITING, 0, 0);
    entities.persist(row);
    note(id, "asked", asked.from() + " to " + asked.to());
  }

  /**
   * The same plan is worked on anew; its answer stands until there is a better one.
   *
   * @param prepare is given the hold on the plan, while nobody else may change it
   * @throws Problem 409 while it is still being worked on
   */
  @Transactional
  <T> T again(String id, Function<Hold, T> prepare) {
    RoundPlanRow row = idle(id);
    row.revision++;
    row.message = "";
    row.stopAsked = false;
    row.resumed = 0;
    stand(row, State.WAITING, 0, 0);
    note(id, "asked anew", "revision " + row.revision);
    return prepare.apply(row.hold());
  }

  /**
   * Says that the planning is alive, with the best plan so far if it is new. One that was away for
   * a while and that nobody took up again goes on.
   */
  @Transactional
  Hold.Kept keep(Hold hold, State state, double share, int found, RoundPlan best) {
    Optional<RoundPlanRow> held = held(hold);
    held.ifPresent(
        row -> {
          stand(row, state, share, found);
          if (best != null) {
            write(row.id, best);
          }
        });
    return held.map(row -> row.stopAsked ? Hold.Kept.STOP_ASKED : Hold.Kept.WRITTEN)
        .orElse(Hold.Kept.LOST);
  }

  private Optional<RoundPlanRow> held(Hold hold) {
    RoundPlanRow row = locked(hold.plan());
    return Optional.ofNullable(row).filter(r -> r.state().open() && r.hold().equals(hold));
  }

  /** Asks whichever instance works on it to end with the best so far. */
  @Transactional
  void askToStop(String id) {
    RoundPlanRow row = locked(id);
    row.stopAsked = true;
    note(id, "asked to stop", "revision " + row.revision);
  }

  /** Plans that were promised and that nobody works on any more: of days that are not over. */
  @Transactional
  List<String> left(LocalDate today) {
    return entities
        .createQuery(
            "select id from RoundPlanRow where lastDay >= :today and (state in (:waiting,"
                + " :planning) and beat < :dead or state = :interrupted and beat > :recent) order"
                + " by requested",
            String.class)
        .setParameter("today", today)
        .setParameter("waiting", State.WAITING.code())
        .setParameter("planning", State.PLANNING.code())
        .setParameter("interrupted", State.INTERRUPTED.code())
        .setParameter("dead", clock.instant().minus(RoundPlanRow.DEAD_AFTER))
        .setParameter("recent", clock.instant().minus(RECENT))
        .getResultList();
  }

  /**
   * Takes a plan that nobody works on any more.
   *
   * @return the hold on it; empty when another instance was faster, or it is to be left as it is
   */
  @Transactional
  Optional<Hold> claim(String id) {
    RoundPlanRow row = locked(id);
    boolean interrupted = row.state.equals(State.INTERRUPTED.code());
    if (!interrupted && !row.standing(clock.instant()).state().equals(State.INTERRUPTED)) {
      return Optional.empty();
    }
    if (row.stopAsked || row.resumed >= MOST_RESUMED) {
      row.message = row.stopAsked ? "" : "The service ended each time while it was planned.";
      stand(row, row.stopAsked ? State.STOPPED : State.FAILED, row.share, row.found);
      return Optional.empty();
    }
    row.resumed++;
    stand(row, State.WAITING, 0, 0);
    note(id, "taken up again", "revision " + row.revision);
    return Optional.of(row.hold());
  }

  /**
   * The end of planning, told to the feed in the same transaction.
   *
   * @return false when nothing was written: the plan is another's, or ended
   */
  @Transactional
  boolean end(Hold hold, State state, int found, RoundPlan plan, String message) {
    Optional<RoundPlanRow> held = held(hold);
    held.ifPresent(row -> end(row, state, found, plan, message));
    return held.isPresent();
  }

  private void end(RoundPlanRow row, State state, int found, RoundPlan plan, String message) {
    stand(row, state, 1, found);
    row.message = message.length() > 4000 ? message.substring(0, 4000) : message;
    if (plan != null) {
      write(row.id, plan);
      tell(row, plan, plan.rounds());
    }
    String made = plan == null ? "" : plan.rounds().size() + " rounds, ";
    note(row.id, state.code(), made + "revision " + row.revision);
  }

  private void note(String id, String action, String became) {
    audit.note(Audit.Change.of("rounds", id, action, "", became));
  }

  /** Rounds that were told and are no longer in the plan are called off first. */
  private void tell(RoundPlanRow row, RoundPlan plan, List<RoundPlan.Round> changed) {
    List<Change> changes = new ArrayList<>();
    Map<String, RoundToldRow> told = new TreeMap<>();
    entities
        .createQuery("from RoundToldRow where planId = :id", RoundToldRow.class)
        .setParameter("id", row.id)
        .getResultList()
        .forEach(each -> told.put(each.round, each));
    for (RoundPlan.Round round : plan.rounds()) {
      if (told.remove(round.key()) == null) {
        entities.persist(RoundToldRow.of(row.id, round));
      }
    }
    for (RoundToldRow gone : told.values()) {
      changes.add(gone.cancelled(row.revision));
      entities.remove(gone);
    }
    sites.put(row.id, plan);
    changes.addAll(RoundView.changes(row.id, row.revision, changed));
    outbox.add(changes);
  }

  /** A change to a plan that has been made. */
  @Transactional
  void revise(String id, RoundPlan plan, List<RoundPlan.Round> changed) {
    RoundPlanRow row = locked(id);
    row.revision++;
    write(id, plan);
    tell(row, plan, changed);
    note(id, "revised", changed.size() + " rounds changed, revision " + row.revision);
  }

  private void stand(RoundPlanRow row, State state, double share, int found) {
    row.state = state.code();
    row.share = share;
    row.found = found;
    row.beat = clock.instant();
  }

  /** For as long as the transaction lasts nobody else changes the plan. */
  RoundPlanRow locked(String id) {
    return entities.find(RoundPlanRow.class, id, LockModeType.PESSIMISTIC_WRITE);
  }

  /**
   * The same of one that nobody works on. Asked before the lock, two could be told so at once.
   *
   * @throws Problem 404, or 409 while it is still being worked on, here or on another instance
   */
  RoundPlanRow idle(String id) {
    RoundPlanRow row = locked(id);
    if (row == null) {
      throw Problem.notFound("plan of rounds " + id);
    }
    if (row.standing(clock.instant()).state().open()) {
      throw Problem.conflict("This plan is still being worked on: stop it first, or wait.");
    }
    return row;
  }

  private void write(String id, RoundPlan plan) {
    entities
        .createQuery("delete from RoundPieceRow where planId = :id")
        .setParameter("id", id)
        .executeUpdate();
    byte[] packed = pack(plan);
    for (int at = 0; at < packed.length; at += PIECE) {
      RoundPieceRow piece = new RoundPieceRow();
      piece.planId = id;
      piece.position = at / PIECE;
      piece.piece = Arrays.copyOfRange(packed, at, Math.min(packed.length, at + PIECE));
      entities.persist(piece);
    }
    entities.flush();
  }

  private byte[] pack(RoundPlan plan) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (OutputStream packing = new GZIPOutputStream(bytes)) {
      json.writeValue(packing, plan);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  @Transactional
  Optional<Rounds.Entry> find(String id) {
    RoundPlanRow row = entities.find(RoundPlanRow.class, id);
    return row == null
        ? Optional.empty()
        : Optional.of(new Rounds.Entry(row.standing(clock.instant()), plan(id)));
  }

  @Transactional
  Optional<RoundRequest> asked(String id) {
    RoundPlanRow row = entities.find(RoundPlanRow.class, id);
    try {
      return row == null
          ? Optional.empty()
          : Optional.of(json.readValue(row.asked, RoundRequest.class));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * @param technician whose plans alone are asked for; empty for all
   */
  @Transactional
  List<Standing> latest(String technician, int limit) {
    return entities
        .createQuery(
            "from RoundPlanRow p where :technician = '' or exists (select 1 from RoundSiteRow s"
                + " where s.planId = p.id and s.technician = :technician)"
                + " order by p.requested desc, p.id",
            RoundPlanRow.class)
        .setParameter("technician", technician)
        .setMaxResults(limit)
        .getResultStream()
        .map(row -> row.standing(clock.instant()))
        .toList();
  }

  private Optional<RoundPlan> plan(String id) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    entities
        .createQuery("from RoundPieceRow where planId = :id order by position", RoundPieceRow.class)
        .setParameter("id", id)
        .getResultList()
        .forEach(
            piece -> {
              packed.writeBytes(piece.piece);
              // a new document may be written in this transaction under the same keys
              entities.detach(piece);
            });
    if (packed.size() == 0) {
      return Optional.empty();
    }
    try (GZIPInputStream unpacking =
        new GZIPInputStream(new ByteArrayInputStream(packed.toByteArray()))) {
      return Optional.of(json.readValue(unpacking, RoundPlan.class));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private String text(RoundRequest asked) {
    try {
      return json.writeValueAsString(asked);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
