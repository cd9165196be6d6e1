package coldround.fleet.edge;

import coldround.fleet.Customer;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.Id;
import jakarta.persistence.SequenceGenerator;
import jakarta.persistence.Table;

@Entity
@Table(name = "customer")
class CustomerRow {
  @Id
  @GeneratedValue(generator = "customer_seq")
  @SequenceGenerator(name = "customer_seq", sequenceName = "customer_seq")
  Long id;

  String code;
  String name;
  String email;
  String note;

  Customer read() {
    return new Customer(code, name, email, note);
  }

  void write(Customer customer) {
    code = customer.code();
    name = customer.name();
    email = customer.email();
    note = customer.note();
  }
}
