package coldround.replacement.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.net.URL;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The packaged service asks its libraries before the platform: a library that brings old XML
 * classes along breaks the printing there, while tests on a plain class path pass.
 */
class PrintingTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "org/w3c/dom/Document.class",
        "org/w3c/dom/Node.class",
        "javax/xml/parsers/DocumentBuilderFactory.class",
        "javax/xml/transform/Transformer.class",
        "org/xml/sax/XMLReader.class"
      })
  void noLibraryBringsXmlClassesOfThePlatform(String name) throws IOException {
    List<URL> all =
        Collections.list(PrintingTest.class.getClassLoader().getResources(name)).stream().toList();
    assertFalse(all.isEmpty(), name);
    assertEquals(List.of(), all.stream().filter(url -> !url.getProtocol().equals("jrt")).toList());
  }
}
