package coldround.fleet.edge;

import coldround.fleet.TravelTime;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;

@Entity
@Table(name = "travel_time")
@IdClass(TravelTimeRow.Key.class)
class TravelTimeRow {

  record Key(String fromPlace, String toPlace) implements Serializable {}

  @Id String fromPlace;
  @Id String toPlace;

  double minutes;
  String distance;

  TravelTime read() {
    return new TravelTime(fromPlace, toPlace, minutes, Packed.quantity(distance));
  }

  void write(TravelTime time) {
    fromPlace = time.from();
    toPlace = time.to();
    minutes = time.minutes();
    distance = Packed.text(time.distance());
  }
}
