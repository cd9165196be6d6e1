package coldround.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class PackedChangesTest {

  @Provide
  Arbitrary<List<ChangeText>> changes() {
    // halves of a pair are no characters and would come back as question marks
    Arbitrary<String> texts = Arbitraries.strings().withCharRange('\0', '\ud7ff').ofMaxLength(300);
    return Combinators.combine(texts, texts, texts)
        .as(ChangeText::new)
        .list()
        .ofMaxSize(PackedChanges.MOST);
  }

  @Property(tries = 200)
  void whateverIsPackedComesBackInItsOrder(@ForAll("changes") List<ChangeText> changes) {
    assertEquals(changes, PackedChanges.unpack(PackedChanges.pack(changes), changes.size()));
  }

  @Test
  void longOnesDoNotStandWithMany() {
    ChangeText longOne = new ChangeText("t", "s", "x".repeat(150_000));
    assertEquals(
        List.of(2, 2, 1),
        PackedChanges.together(Collections.nCopies(5, longOne)).stream().map(List::size).toList());
    ChangeText shortOne = new ChangeText("t", "s", "{}");
    assertEquals(
        List.of(PackedChanges.MOST, 1),
        PackedChanges.together(Collections.nCopies(PackedChanges.MOST + 1, shortOne)).stream()
            .map(List::size)
            .toList());
    assertEquals(List.of(), PackedChanges.together(List.of()));
  }

  @Test
  void anotherNumberThanWasPackedOrCutBytesAreAnErrorAndNotFewerChanges() {
    List<ChangeText> two =
        List.of(
            new ChangeText("coldround.task.planned", "1-survey", "{\"id\": \"1-survey\"}"),
            new ChangeText("coldround.task.planned", "2-survey", "{\"id\": \"2-survey\"}"));
    byte[] packed = PackedChanges.pack(two);
    assertEquals(two, PackedChanges.unpack(packed, 2));
    assertThrows(UncheckedIOException.class, () -> PackedChanges.unpack(packed, 3));
    assertThrows(UncheckedIOException.class, () -> PackedChanges.unpack(packed, 1));
    byte[] cut = Arrays.copyOf(packed, packed.length / 2);
    assertThrows(UncheckedIOException.class, () -> PackedChanges.unpack(cut, 2));
    assertThrows(
        UncheckedIOException.class,
        () -> PackedChanges.unpack(two.toString().getBytes(StandardCharsets.UTF_8), 2));
  }
}
