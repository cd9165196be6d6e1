package coldround.field.edge;

import static coldround.Api.asPlanner;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.response.ValidatableResponse;
import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** A customer of its own for each test, with one site and one unit to visit. */
final class FieldFleet {

  final String customer = "F" + UUID.randomUUID().toString().substring(0, 8);
  final String unit;

  /** R-12 and a split of 30 °F: the example that service men know by heart. */
  FieldFleet() {
    this("0");
  }

  FieldFleet(String elevationFt) {
    list("customers", "customer,name\n" + customer + ",Harbor Grocers\n");
    list(
        "sites",
        "customer,site,name,address,elevation [ft],latitude,longitude\n"
            + customer
            + ",S1,Dock Street,\"1 Dock Street; rear, left\","
            + elevationFt
            + ",45.5,-122.6\n");
    list(
        "units",
        "customer,site,unit,kind,refrigerant,charge [lb],design_split [deltaF],installed,"
            + "condenser_fan_rated [A],compressor_rated [A],supply [V],box_setpoint [degF]\n"
            + customer
            + ",S1,U1,walk-in-cooler,R-12,20,30,2020-01-01,1.0,10,208,37\n");
    unit =
        asPlanner()
            .queryParam("customer", customer)
            .get("/api/v1/units")
            .jsonPath()
            .getString("items[0].unit.id");
  }

  static void list(String kind, String text) {
    asPlanner()
        .contentType("text/csv")
        .body(text.getBytes(StandardCharsets.UTF_8))
        .post("/api/v1/imports/" + kind)
        .then()
        .statusCode(200)
        .body("rows.rejected", equalTo(0), "rows.read", equalTo(1));
  }

  /** Sends a visit; single quotes stand for double ones and UNIT for the id of the unit. */
  ValidatableResponse visit(String json) {
    return asPlanner()
        .contentType("application/json")
        .body(json(json))
        .post("/api/v1/visits")
        .then();
  }

  String json(String text) {
    return text.replace("UNIT", unit).replace('\'', '"');
  }

  /** Head pressure and ambient of one visit. */
  ValidatableResponse head(String number, String psig, String ambientF) {
    return visit(
        ("{'unit': 'UNIT', 'visit': '%s', 'date': '2026-05-12', 'readings': ["
                + "{'quantity': 'head_pressure', 'value': %s, 'unit': 'psig'},"
                + "{'quantity': 'ambient', 'value': %s, 'unit': 'degF'}]}")
            .formatted(number, psig, ambientF));
  }
}
