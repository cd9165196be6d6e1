package coldround.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;

import coldround.fleet.FleetWriting;
import coldround.fleet.FleetWriting.Outcome;
import coldround.fleet.FleetWriting.Written;
import coldround.fleet.Kind;
import coldround.sheet.SheetReader;
import coldround.sheet.SheetWriter;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is sent, it is counted row by row or refused as a whole with a reason. */
class AnyFileTest {

  private static final FleetWriting STORE =
      (kind, batch, origin) ->
          new Written(batch.stream().map(entry -> Outcome.CREATED).toList(), Set.of(), List.of());

  /** Null when refused. */
  private static Tally run(Kind kind, byte[] bytes, StringWriter rejected) throws IOException {
    Path file = Files.createTempFile("any", ".csv");
    List<Column> columns = Lists.TABLES.columns(kind);
    try {
      Files.write(file, bytes);
      try (TableFile table = TableFile.open(file, "", kind, columns, Lists.rules())) {
        SheetWriter rows = SheetWriter.guarded(rejected);
        return new Importing(
                kind, table.heading(), columns, Lists.rules(), STORE, Lists.run(), rows)
            .run(table.rows());
      } catch (UnreadableFile refusal) {
        assertFalse(refusal.getMessage().isBlank());
        return null;
      }
    } finally {
      Files.delete(file);
    }
  }

  private static void assertAccountedFor(Tally tally) {
    if (tally != null) {
      long rejecting = tally.problems().stream().filter(RowProblem::rejects).count();
      assertEquals(tally.rows().rejected() > 0, rejecting > 0);
      tally.problems().forEach(problem -> assertFalse(problem.message().isBlank()));
    }
  }

  @Property(tries = 200)
  void anyBytesAreAccountedForOrRefused(@ForAll Kind kind, @ForAll byte[] bytes)
      throws IOException {
    assertAccountedFor(run(kind, bytes, new StringWriter()));
  }

  @Property(tries = 300)
  void anyBytesUnderAGoodHeaderAreAccountedForOrRefused(@ForAll Kind kind, @ForAll byte[] bytes)
      throws IOException {
    byte[] header = Lists.TABLES.columns().template(kind).getBytes(StandardCharsets.UTF_8);
    byte[] file = java.util.Arrays.copyOf(header, header.length + bytes.length);
    System.arraycopy(bytes, 0, file, header.length, bytes.length);
    assertAccountedFor(run(kind, file, new StringWriter()));
  }

  @Property(tries = 300)
  void anyCellsOfAnyColumnAreReadOrRefused(
      @ForAll Kind kind, @ForAll @Size(min = 1, max = 40) List<String> cells) {
    List<Column> columns = Lists.TABLES.columns(kind);
    List<String> row = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      row.add(cells.get(i % cells.size()));
    }
    RowReading.Understood read =
        Lists.row(kind, Profile.STANDARD, columns.stream().map(Column::header).toList(), row);
    assertEquals(read.entry() == null, read.problems().stream().anyMatch(RowProblem::rejects));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "customer,site,unit,visit,date,note\r\n"})
  void fiftyMegabytesOfPrintableNoiseAreRefused(String header) throws IOException {
    byte[] noise = new byte[50_000_000];
    new Random(2).nextBytes(noise);
    for (int i = 0; i < noise.length; i++) {
      int b = noise[i] & 0x7F;
      noise[i] = (byte) (b < 3 && !header.isEmpty() ? '\n' : b < 32 ? ',' : b == '"' ? '\'' : b);
    }
    System.arraycopy(header.getBytes(StandardCharsets.UTF_8), 0, noise, 0, header.length());
    assertNull(run(Kind.VISITS, noise, new StringWriter()));
  }

  @Provide
  Arbitrary<List<String>> cells() {
    Arbitrary<String> odd =
        Arbitraries.of(
            "=1+1", "'=x", "''-y", "-", "@a", "\"", "a\"b,c", "x\r\ny", "\ty", "1,5", "");
    Arbitrary<String> any = Arbitraries.strings().withCharRange(' ', '\u04FF').ofMaxLength(30);
    return Arbitraries.oneOf(odd, any).list().ofSize(5);
  }

  @Property(tries = 300)
  void rejectedRowsComeBackAsTheyWere(@ForAll("cells") List<String> cells) {
    RowProblem problem = new RowProblem(7, "c", "v", ProblemCode.MISSING, "say it");
    StringWriter text = new StringWriter();
    SheetWriter.guarded(text).write(RejectedRows.row(cells, List.of(problem)));
    List<String> back =
        SheetReader.standard(new StringReader(text.toString())).next().cells().stream()
            .map(coldround.sheet.FormulaGuard::undo)
            .toList();
    assertEquals(cells, back.subList(0, 5));
    assertEquals(List.of("7", "c", "say it"), back.subList(5, 8));
  }
}
