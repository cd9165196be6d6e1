package coldround.feed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.UncheckedIOException;
import java.util.Arrays;
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
    // all of Unicode but halves of a pair, which no JSON that we write has
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
  void anotherNumberThanWasPackedOrCutBytesAreAnErrorAndNotFewerChanges() {
    List<ChangeText> two =
        List.of(
            new ChangeText("coldround.task.planned", "1-survey", "{\"id\": \"1-survey\"}"),
            new ChangeText("coldround.task.planned", "2-survey", "{\"id\": \"2-survey\"}"));
    byte[] packed = PackedChanges.pack(two);
    assertEquals(two, PackedChanges.unpack(packed, 2));
    assertThrows(UncheckedIOException.class, () -> PackedChanges.unpack(packed, 3));
    byte[] cut = Arrays.copyOf(packed, packed.length / 2);
    assertThrows(UncheckedIOException.class, () -> PackedChanges.unpack(cut, 2));
    assertThrows(
        UncheckedIOException.class, () -> PackedChanges.unpack(two.toString().getBytes(), 2));
  }
}
