package coldround.fleet.edge;

import coldround.fleet.Site;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.Id;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.SequenceGenerator;
import jakarta.persistence.Table;
import java.time.ZoneId;

@Entity
@Table(name = "site")
class SiteRow {
  @Id
  @GeneratedValue(generator = "site_seq")
  @SequenceGenerator(name = "site_seq", sequenceName = "site_seq")
  Long id;

  @ManyToOne(fetch = FetchType.LAZY)
  CustomerRow customer;

  String code;
  String name;
  String address;
  Double latitude;
  Double longitude;
  String elevation;
  String timeZone;
  String jurisdiction;
  String surroundings;
  String visitingHours;
  String designAmbient;

  Site read() {
    return new Site(
        customer.code,
        code,
        name,
        address,
        latitude,
        longitude,
        Packed.quantity(elevation),
        timeZone.isEmpty() ? null : ZoneId.of(timeZone),
        jurisdiction,
        surroundings,
        visitingHours,
        Packed.quantity(designAmbient));
  }

  void write(Site site) {
    code = site.code();
    name = site.name();
    address = site.address();
    latitude = site.latitude();
    longitude = site.longitude();
    elevation = Packed.text(site.elevation());
    timeZone = site.timeZone() == null ? "" : site.timeZone().getId();
    jurisdiction = site.jurisdiction();
    surroundings = site.surroundings();
    visitingHours = site.visitingHours();
    designAmbient = Packed.text(site.designAmbient());
  }
}
