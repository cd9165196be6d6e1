package coldround.pages.edge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import coldround.Api;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;

/**
 * The pictures of the docs are of the pages of the demo fleet. {@code -Dcoldround.pictures=true}
 * makes them anew; without it they are held against what the docs show.
 */
@QuarkusTest
@TestProfile(DemoStore.class)
class PicturesTest {

  private static final Path PICTURES = Path.of("docs", "pictures");
  private static final Pattern SHOWN = Pattern.compile("pictures/([\\w-]+\\.png)");

  /** Names of pages, each there for a screen and for a phone, with their addresses. */
  private static final Map<String, String> PAGES =
      Map.of(
          "fleet", "",
          "unit", "units/UNIT",
          "visit", "units/UNIT/visits/new",
          "import", "imports",
          "upkeep", "upkeep",
          "rounds", "rounds/PLAN",
          "move", "rounds/PLAN/moves?MOVE",
          "replacement", "replacement?customer=LMC&limit=20000",
          "roof", "refrigerants?refrigerant=R-404A&ambient=70&split=30&head=290");

  private static final int DESK = 1280;
  private static final int PHONE = 390;

  @Inject SampleFleet fleet;

  @TestHTTPResource("/")
  URL home;

  @Test
  void thePicturesOfTheDocsAreOfThePages() throws Exception {
    if (Boolean.getBoolean("coldround.pictures")) {
      make();
    }
    Set<String> shown = shown();
    Set<String> there = new TreeSet<>();
    try (Stream<Path> files = Files.list(PICTURES)) {
      files.forEach(file -> there.add(file.getFileName().toString()));
    }
    assertEquals(there, shown, "pictures that are there, and those that the docs show");
    for (String page : PAGES.keySet()) {
      assertEquals(DESK, width(page + "-desk.png"), page);
      assertEquals(PHONE, width(page + "-phone.png"), page);
    }
  }

  private static Set<String> shown() throws IOException {
    Set<String> shown = new TreeSet<>();
    List<Path> texts = new ArrayList<>(List.of(Path.of("README.md")));
    try (Stream<Path> docs = Files.list(Path.of("docs"))) {
      docs.filter(file -> file.toString().endsWith(".md")).forEach(texts::add);
    }
    for (Path text : texts) {
      SHOWN.matcher(Files.readString(text)).results().forEach(found -> shown.add(found.group(1)));
    }
    return shown;
  }

  private static int width(String name) throws IOException {
    BufferedImage image = ImageIO.read(PICTURES.resolve(name).toFile());
    assertTrue(image != null, name + " is no picture");
    return image.getWidth();
  }

  private void make() throws Exception {
    JsonPath plan = PlannedRounds.plan("\"seconds\": 5, \"seed\": 7");
    String unit = fleet.all().get(0).unitId();
    AllowedMove wish = AllowedMove.in(plan.getString("id"));
    String move =
        "stop=%s&technician=%s&day=%s".formatted(wish.stop(), wish.technician(), wish.day());
    try (Browser browser = Browser.open().orElseThrow()) {
      browser.light("light");
      browser.screen(DESK, 900);
      browser.go(home + "enter?token=" + Api.TOKEN);
      PAGES.forEach(
          (name, address) -> {
            String its =
                address
                    .replace("UNIT", unit)
                    .replace("PLAN", plan.getString("id"))
                    .replace("MOVE", move);
            shoot(browser, its, DESK, 900, name + "-desk.png");
            shoot(browser, its, PHONE, 844, name + "-phone.png");
          });
      browser.paper(true);
      String technician = plan.getString("days[0].rounds[0].technician.code");
      String sheet = "rounds/" + plan.getString("id") + "/sheet?technician=" + technician;
      shoot(browser, sheet, 794, 1123, "route-sheet.png");
    }
    report();
  }

  private void shoot(Browser browser, String address, int width, int height, String name) {
    browser.screen(width, height);
    browser.go(home + address);
    try {
      Files.write(PICTURES.resolve(name), browser.seen());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The first two pages of the customer's report on paper. */
  private static void report() throws Exception {
    byte[] pdf = Api.asPlanner().get(CustomerPlan.made() + ".pdf").asByteArray();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFRenderer renderer = new PDFRenderer(document);
      for (int page = 0; page < 2; page++) {
        ImageIO.write(
            renderer.renderImageWithDPI(page, 80),
            "png",
            PICTURES.resolve("replacement-page-" + (page + 1) + ".png").toFile());
      }
    }
  }
}
