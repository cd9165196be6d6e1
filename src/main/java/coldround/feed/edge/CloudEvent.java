package coldround.feed.edge;

import com.fasterxml.jackson.annotation.JsonRawValue;
import java.net.URI;
import java.time.Instant;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * One change as CloudEvents 1.0 in JSON.
 *
 * @param id with the source it tells changes apart: one that comes again has the same
 * @param dataschema address of the JSON Schema of the data
 * @param data how what changed stands now
 */
@Schema(
    requiredProperties = {
      "specversion",
      "id",
      "source",
      "type",
      "subject",
      "time",
      "datacontenttype",
      "dataschema",
      "data"
    })
record CloudEvent(
    String specversion,
    String id,
    String source,
    String type,
    String subject,
    Instant time,
    String datacontenttype,
    URI dataschema,
    @JsonRawValue @Schema(type = SchemaType.OBJECT, description = "As the schema of its type says")
        String data) {

  /** Media type of one event in JSON. */
  static final String MEDIA_TYPE = "application/cloudevents+json";

  /**
   * @param service address under which this service is known
   */
  static CloudEvent of(FeedEvent event, URI service) {
    return new CloudEvent(
        "1.0",
        event.id(),
        "/coldround",
        event.type(),
        event.subject(),
        event.happened(),
        "application/json",
        service.resolve(SchemasResource.PATH + "/" + event.type()),
        event.data());
  }
}
