package coldround.fleet.edge;

import coldround.fleet.Technician;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "technician")
class TechnicianRow {
  @Id String code;

  String name;
  Double latitude;
  Double longitude;
  String hours;
  String competences;

  @Column(name = "days_off")
  String daysOff;

  Technician read() {
    return new Technician(
        code, name, latitude, longitude, hours, Packed.codes(competences), Packed.days(daysOff));
  }

  void write(Technician technician) {
    code = technician.code();
    name = technician.name();
    latitude = technician.latitude();
    longitude = technician.longitude();
    hours = technician.hours();
    competences = String.join(";", technician.competences());
    daysOff = Packed.text(technician.daysOff());
  }
}
