package coldround.intake.edge;

import coldround.intake.Receipt;
import coldround.intake.RowProblem;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Enumeration;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;

/** Keeps receipts, and the packed file of rejected rows in pieces of bounded size. */
@ApplicationScoped
class StoredReceipts {

  private static final int PIECE = 1 << 16;

  private final EntityManager entities;
  private final ObjectMapper json;

  @Inject
  StoredReceipts(EntityManager entities, ObjectMapper json) {
    this.entities = entities;
    this.json = json;
  }

  /** In the transaction of the caller, or in one of its own. */
  @Transactional
  void keep(Receipt receipt, Path rejected) {
    entities.persist(ReceiptRow.of(receipt, text(ReceiptDetails.of(receipt))));
    List<RowProblem> problems = receipt.problems();
    for (int i = 0; i < problems.size(); i++) {
      entities.persist(ProblemRow.of(receipt.id(), i, problems.get(i)));
    }
    entities.flush();
    try (InputStream bytes = Files.newInputStream(rejected)) {
      keepPieces(receipt.id(), bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void keepPieces(String id, InputStream bytes) throws IOException {
    int position = 0;
    for (byte[] piece = bytes.readNBytes(PIECE);
        piece.length > 0;
        piece = bytes.readNBytes(PIECE)) {
      entities.persist(RejectedPiece.of(id, position++, piece));
      entities.flush();
      entities.clear();
    }
  }

  @Transactional
  Optional<Receipt> find(String id) {
    ReceiptRow row = entities.find(ReceiptRow.class, id);
    return row == null ? Optional.empty() : Optional.of(row.read(problems(id), details(row)));
  }

  private String text(ReceiptDetails details) {
    try {
      return json.writeValueAsString(details);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  private ReceiptDetails details(ReceiptRow row) {
    try {
      return json.readValue(row.details, ReceiptDetails.class);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<RowProblem> problems(String id) {
    return entities
        .createQuery("from ProblemRow where importId = :id order by position", ProblemRow.class)
        .setParameter("id", id)
        .getResultStream()
        .map(ProblemRow::read)
        .toList();
  }

  /** The file of rejected rows, unpacked, read piece by piece. */
  InputStream rejectedRows(String id) throws IOException {
    return new GZIPInputStream(new SequenceInputStream(new Pieces(id)), PIECE);
  }

  /** The pieces in their order, each read when it is asked for. */
  private final class Pieces implements Enumeration<InputStream> {
    private final String id;
    private int position;
    private byte[] next;

    Pieces(String id) {
      this.id = id;
      this.next = read();
    }

    private byte[] read() {
      RejectedPiece.Key key = new RejectedPiece.Key(id, position++);
      return QuarkusTransaction.requiringNew()
          .call(
              () -> {
                RejectedPiece piece = entities.find(RejectedPiece.class, key);
                return piece == null ? null : piece.piece;
              });
    }

    @Override
    public boolean hasMoreElements() {
      return next != null;
    }

    @Override
    public InputStream nextElement() {
      InputStream piece = new ByteArrayInputStream(next);
      next = read();
      return piece;
    }
  }
}
