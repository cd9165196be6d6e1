package coldround.fleet.edge;

import coldround.fleet.Unit;
import coldround.fleet.UnitIds;
import jakarta.persistence.Entity;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.Id;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.SequenceGenerator;
import jakarta.persistence.Table;
import java.time.LocalDate;

@Entity
@Table(name = "unit")
class UnitRow {
  @Id
  @GeneratedValue(generator = "unit_seq")
  @SequenceGenerator(name = "unit_seq", sequenceName = "unit_seq")
  Long id;

  @ManyToOne(fetch = FetchType.LAZY)
  SiteRow site;

  String tag;
  String kind;
  String machine;
  String maker;
  String model;
  String serial;
  LocalDate installed;
  String refrigerant;
  String condenserPlace;
  LocalDate retired;
  String plate;

  Unit read() {
    return new Unit(
        UnitIds.text(id),
        site.customer.code,
        site.code,
        tag,
        kind,
        machine,
        maker,
        model,
        serial,
        installed,
        refrigerant,
        condenserPlace,
        retired,
        Packed.plate(plate));
  }

  void write(Unit unit) {
    tag = unit.tag();
    kind = unit.kind();
    machine = unit.machine();
    maker = unit.maker();
    model = unit.model();
    serial = unit.serial();
    installed = unit.installed();
    refrigerant = unit.refrigerant();
    condenserPlace = unit.condenserPlace();
    retired = unit.retired();
    plate = Packed.text(unit.plate());
  }
}
