package coldround.feed.edge;

import coldround.feed.Cursor;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A subscription as it stands. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record SubscriptionView(
    String id,
    URI url,
    @Schema(description = "Kinds of change wanted; all when empty") List<String> types,
    String description,
    @Schema(description = "active, or stopped until it is resumed", examples = "active")
        String state,
    @Schema(description = "What the last failure was; empty when there is none") String reason,
    @Schema(description = "Cursor of the feed up to which all has been told or is a dead letter")
        String cursor,
    @Schema(description = "Failed tries of the next change") int tries,
    @Schema(description = "When it is tried again") Instant nextTry,
    Instant created,
    @Schema(description = "When a change was last taken") Instant delivered,
    @Schema(description = "How many changes could not be delivered") long deadLetters,
    @Schema(description = "Until when the secret before the last rotation signs along")
        Instant oldSecretUntil,
    @Schema(
            description =
                "Key of the signatures (Standard Webhooks 1.0.0), shown only where it is made")
        String secret) {

  static SubscriptionView of(SubscriptionRow row, long deadLetters, Instant now, boolean secret) {
    boolean changing = row.oldUntil != null && now.isBefore(row.oldUntil);
    return new SubscriptionView(
        row.id,
        URI.create(row.url),
        row.typeList(),
        row.description,
        row.state,
        row.reason,
        new Cursor(row.position).text(),
        row.tries,
        row.nextTry,
        row.created,
        row.delivered,
        deadLetters,
        changing ? row.oldUntil : null,
        secret ? row.secret : null);
  }
}
