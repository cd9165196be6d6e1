package coldround.intake.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;

@Entity
@Table(name = "import_rejected")
@IdClass(RejectedPiece.Key.class)
class RejectedPiece {

  record Key(String importId, int position) implements Serializable {}

  @Id String importId;
  @Id int position;
  byte[] piece;

  static RejectedPiece of(String importId, int position, byte[] piece) {
    RejectedPiece row = new RejectedPiece();
    row.importId = importId;
    row.position = position;
    row.piece = piece;
    return row;
  }
}
