package coldround.rounds.edge;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.io.Serializable;

/** A part of the packed document of a plan. */
@Entity
@Table(name = "round_piece")
@IdClass(RoundPieceRow.Key.class)
class RoundPieceRow {

  record Key(String planId, int position) implements Serializable {}

  @Id String planId;
  @Id int position;
  byte[] piece;
}
