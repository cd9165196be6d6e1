package coldround.pages.edge;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.FluentWait;

/** Chromium as found on the machine, with a screen of a given size. */
public final class Browser implements AutoCloseable {

  private static final Path SHOTS = Path.of("target", "screenshots");

  private final ChromeDriver driver;
  private final Path profile;

  private Browser(Path chromium, Path chromedriver) throws IOException {
    profile = Files.createTempDirectory("coldround-browser");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium.toFile());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-dev-shm-usage",
        "--hide-scrollbars",
        "--user-data-dir=" + profile);
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(chromedriver.toFile()).build();
    driver = new ChromeDriver(service, options);
  }

  /** Empty, after saying so loudly, where the machine has no Chromium. */
  public static Optional<Browser> open() throws IOException {
    Optional<Path> chromium = find("chromium", "chromium-browser", "google-chrome");
    Optional<Path> driver = find("chromedriver");
    if (chromium.isEmpty() || driver.isEmpty()) {
      System.out.println(
          "\n*** LEFT OUT: the pages were not looked at in a real browser, because chromium and"
              + " chromedriver are not on this machine (Debian: apt-get install chromium"
              + " chromium-driver) ***\n");
      return Optional.empty();
    }
    return Optional.of(new Browser(chromium.get(), driver.get()));
  }

  private static Optional<Path> find(String... names) {
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator))
        .flatMap(folder -> Stream.of(names).map(name -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst();
  }

  public ChromeDriver driver() {
    return driver;
  }

  public void go(String address) {
    driver.get(address);
  }

  /**
   * A line of that speed with nothing remembered, until told otherwise.
   *
   * @param megabits a second, both ways
   * @param latencyMs of each answer
   */
  public void throttle(double megabits, int latencyMs) {
    double bytes = megabits * 1e6 / 8;
    driver.executeCdpCommand("Network.enable", Map.of());
    driver.executeCdpCommand("Network.clearBrowserCache", Map.of());
    driver.executeCdpCommand(
        "Network.emulateNetworkConditions",
        Map.of(
            "offline", false,
            "latency", latencyMs,
            "downloadThroughput", bytes,
            "uploadThroughput", bytes));
  }

  /** Bytes that came over the wire for the page and all it loaded, heads of answers included. */
  public long transferred() {
    return ((Number)
            driver.executeScript(
                "return ['navigation', 'resource'].flatMap(kind =>"
                    + " performance.getEntriesByType(kind)).reduce((sum, entry) =>"
                    + " sum + entry.transferSize, 0)"))
        .longValue();
  }

  /** Milliseconds from the call of the page until all of it was there. */
  public long loadMs() {
    return ((Number)
            driver.executeScript(
                "return performance.getEntriesByType('navigation')[0].loadEventEnd"))
        .longValue();
  }

  /**
   * Does what leads to another page, and comes back when that page is there and what it waits for
   * is done: a page of an import under way calls itself again until it is.
   */
  void follow(Runnable act) {
    driver.executeScript("window.left = true");
    act.run();
    // a page on its way out, or not yet in, may refuse to be asked
    new FluentWait<>(driver)
        .withTimeout(Duration.ofSeconds(60))
        .pollingEvery(Duration.ofMillis(50))
        .ignoring(WebDriverException.class)
        .until(
            page ->
                (Boolean)
                    page.executeScript(
                        "return !window.left && document.readyState === 'complete'"
                            + " && !document.querySelector('[data-run]')"));
  }

  /** Waits until that is true in the page. */
  void await(String script) {
    new FluentWait<>(driver)
        .withTimeout(Duration.ofSeconds(20))
        .pollingEvery(Duration.ofMillis(50))
        .ignoring(WebDriverException.class)
        .until(page -> (Boolean) page.executeScript("return " + script));
  }

  void screen(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
  }

  void light(String scheme) {
    Map<String, Object> feature = Map.of("name", "prefers-color-scheme", "value", scheme);
    driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of(feature)));
  }

  void paper(boolean print) {
    driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", print ? "print" : ""));
  }

  /** By how many pixels the page is wider than the screen. */
  long overflow() {
    return (Long)
        driver.executeScript(
            "return document.documentElement.scrollWidth - document.documentElement.clientWidth");
  }

  /** Whether the first element of that kind takes up room. */
  boolean shows(String selector) {
    return (Boolean)
        driver.executeScript(
            "const box = document.querySelector(arguments[0]).getBoundingClientRect();"
                + " return box.width > 0 && box.height > 0;",
            selector);
  }

  /** What the console says, warnings and errors. */
  List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
        .map(LogEntry::getMessage)
        .toList();
  }

  /** Addresses of everything the page loaded. */
  @SuppressWarnings("unchecked")
  List<String> loaded() {
    return (List<String>)
        driver.executeScript(
            "return performance.getEntriesByType('resource').map(entry => entry.name)");
  }

  /** What the accessibility checks of axe-core find wrong, WCAG 2.2 AA and good practice. */
  @SuppressWarnings("unchecked")
  List<String> violations() throws IOException {
    driver.executeScript(axe());
    return (List<String>)
        driver.executeAsyncScript(
            "const done = arguments[arguments.length - 1];"
                + "axe.run().then(found => done(found.violations.map(rule => rule.id + ': '"
                + " + rule.help + ' at ' + rule.nodes.map(node => node.html + ' ' +"
                + " node.failureSummary).slice(0, 3).join(' ; '))),"
                + " error => done(['axe failed: ' + error]));");
  }

  private static String axe() throws IOException {
    try (InputStream script = Browser.class.getResourceAsStream("/axe.min.js")) {
      return new String(script.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** The whole page as a picture under target/screenshots. */
  void shoot(String name) throws IOException {
    Map<String, Object> shot =
        driver.executeCdpCommand(
            "Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true));
    Files.createDirectories(SHOTS);
    Files.write(
        SHOTS.resolve(name + ".png"), Base64.getDecoder().decode((String) shot.get("data")));
  }

  /** What the screen shows, as PNG. */
  byte[] seen() {
    Map<String, Object> shot =
        driver.executeCdpCommand("Page.captureScreenshot", Map.of("format", "png"));
    return Base64.getDecoder().decode((String) shot.get("data"));
  }

  /** The page as it comes out of the printer, on paper that the page chooses, as PDF. */
  byte[] printed() {
    Map<String, Object> paper =
        driver.executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true));
    return Base64.getDecoder().decode((String) paper.get("data"));
  }

  /** The language that the reader likes best, as its browser tells it. */
  void language(String tag) {
    driver.executeCdpCommand("Network.enable", Map.of());
    driver.executeCdpCommand(
        "Network.setExtraHTTPHeaders", Map.of("headers", Map.of("Accept-Language", tag)));
  }

  @Override
  public void close() throws IOException {
    driver.quit();
    try (Stream<Path> files = Files.walk(profile)) {
      files.sorted(java.util.Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
    }
  }
}
