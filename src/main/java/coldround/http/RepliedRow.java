package coldround.http;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "replied")
class RepliedRow {
  @Id String id;
  String content;
  int status;
  String location;
  String tag;
  String body;
  Instant replied;

  Reply read() {
    return new Reply(status, location, tag, body);
  }

  void write(Reply reply, Instant now) {
    status = reply.status();
    location = reply.location();
    tag = reply.tag();
    body = reply.body();
    replied = now;
  }
}
