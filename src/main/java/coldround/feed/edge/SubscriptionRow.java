package coldround.feed.edge;

import coldround.feed.HookSecret;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

@Entity
@Table(name = "subscription")
class SubscriptionRow {
  static final String ACTIVE = "active";
  static final String STOPPED = "stopped";

  @Id String id;
  String url;
  String types;
  String description;
  String secret;
  String oldSecret;
  Instant oldUntil;
  long position;
  String state;
  String reason;
  int tries;
  Instant nextTry;
  int deadInRow;
  Instant created;
  Instant delivered;
  String holder;
  Instant heldUntil;

  List<String> typeList() {
    return types.isEmpty() ? List.of() : List.of(types.split(" "));
  }

  boolean wants(String type) {
    return types.isEmpty() || typeList().contains(type);
  }

  /** The newest first. */
  List<HookSecret> secrets(Instant now) {
    List<HookSecret> secrets = new ArrayList<>(List.of(HookSecret.parse(secret)));
    if (!oldSecret.isEmpty() && now.isBefore(oldUntil)) {
      secrets.add(HookSecret.parse(oldSecret));
    }
    return secrets;
  }

  void stop(String why) {
    state = STOPPED;
    reason = why.length() > 1000 ? why.substring(0, 1000) : why;
    nextTry = null;
  }

  void resume() {
    state = ACTIVE;
    reason = "";
    tries = 0;
    deadInRow = 0;
    nextTry = null;
  }
}
