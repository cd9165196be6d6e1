package coldround.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WayOnTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/units",
        "/units/",
        "/rounds/abc123",
        "/?customer=LMC",
        "/?q=a+b%2Fc&kind=ice-machine",
        "/refrigerants?refrigerant=R-404A&ambient=95&split=30&head=",
        "/replacement?customer=LMC&limit=25,000",
        "/units/u1/visits/new?note=%0D%0A//not?a/path",
        "/upkeep?week=2026-W20;x=1",
        "/entering",
        "/apiary",
        "/units/%C3%A4"
      })
  void aPageOfOursIsComeBackTo(String asked) {
    assertEquals(Optional.of(asked), WayOn.of(asked).map(WayOn::address));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        " ",
        "/",
        "/?",
        "units",
        "//elsewhere.example",
        "///elsewhere.example",
        "/\\elsewhere.example",
        "\\\\elsewhere.example",
        "/units//elsewhere.example",
        "http://elsewhere.example/",
        "https:elsewhere.example",
        "javascript:alert(1)",
        "data:text/html,x",
        "/units\r\nLocation: //elsewhere.example",
        "/units\tx",
        "/units\u0000",
        "/units?x=\u0007",
        " /units",
        "/units ",
        "/units#part",
        "/units?x=<script>",
        "/units?x=%",
        "/units?x=%4",
        "/unit\u00e4",
        "/..//elsewhere.example",
        "/./units",
        "/units/..",
        "/units/%2e%2E/x",
        "/%2e;x/units",
        "/%2f%2felsewhere.example",
        "/%5Celsewhere.example",
        "/units/%0d%0ax",
        "/enter",
        "/enter?to=/units",
        "/Enter/provider",
        "/%65nter",
        "/enter;x=1",
        "/leave",
        "/api/v1/units",
        "/q/metrics",
        "/assets/page.js",
        "/sw.js",
        "/favicon.ico"
      })
  void anythingElseLeadsHome(String asked) {
    assertEquals(Optional.empty(), WayOn.of(asked).map(WayOn::address));
  }

  @Test
  void nothingAskedLeadsHome() {
    assertTrue(WayOn.of(null).isEmpty());
  }

  /** On both sides of what a request line has room for, plain and with each character encoded. */
  @ParameterizedTest
  @CsvSource({"x, 3490, true", "x, 3491, false", "%41, 698, true", "%41, 699, false"})
  void aLongOneIsComeBackToAsFarAsARequestHasRoom(String part, int times, boolean held) {
    assertEquals(held, WayOn.of("/?x=" + part.repeat(times)).isPresent());
  }

  @Test
  void theWayInCarriesItWhole() {
    String asked = "/refrigerants?refrigerant=R-404A&ambient=35,5&x=a+b%26c";
    String by = WayOn.of(asked).orElseThrow().by("/enter");
    String carried = URI.create(by).getRawQuery().replaceFirst("^to=", "");
    assertFalse(carried.contains("&"));
    assertEquals(asked, URLDecoder.decode(carried, StandardCharsets.UTF_8));
  }

  /** Whatever is let through stays on this service and needs nothing mended to be an address. */
  @Property
  void nothingLeadsAway(@ForAll("wild") String asked) {
    WayOn.of(asked)
        .map(WayOn::address)
        .ifPresent(
            address -> {
              URI there = URI.create("https://here.example/enter").resolve(address).normalize();
              assertEquals("here.example", there.getRawAuthority());
              assertEquals("https://here.example" + address, there.toString());
              assertTrue(address.chars().allMatch(c -> c > ' ' && c < 127));
              assertFalse(there.getPath().startsWith("//"));
              assertFalse(there.getPath().matches("/(enter|leave|api|q|assets)(/.*)?"));
            });
  }

  @Provide
  Arbitrary<String> wild() {
    Arbitrary<String> parts =
        Arbitraries.of(
            "/",
            "//",
            "\\",
            "..",
            ".",
            "%2e",
            "%2F",
            "%5c",
            "%0a",
            "%",
            "?",
            "&",
            "=",
            "#",
            ":",
            "@",
            ";",
            "enter",
            "api",
            "units",
            "x",
            "elsewhere.example",
            "http:",
            "javascript:",
            "\r\n",
            "\t",
            "\u0000",
            " ",
            "\u00e4",
            "\ud83e\uddca",
            "a+b",
            "%C3%A4");
    Arbitrary<String> made = parts.list().ofMaxSize(8).map(list -> String.join("", list));
    return Arbitraries.oneOf(
        made, made.map(rest -> "/" + rest), Arbitraries.strings().ofMaxLength(30));
  }
}
