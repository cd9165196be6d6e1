package coldround.field;

import coldround.fleet.Reading;
import coldround.fleet.Visit;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.TreeMap;

/** A short text that is the same for equal visits and for no others. */
public final class VisitTag {

  private VisitTag() {}

  public static String of(Visit visit) {
    List<String> told = new ArrayList<>();
    told.add(visit.number());
    told.add(String.valueOf(visit.date()));
    told.add(visit.technician());
    told.add(visit.purpose());
    visit.readings().forEach(reading -> tell(reading, told));
    new TreeMap<>(visit.findings()).forEach((part, grade) -> told.add(part + '=' + grade));
    told.add(String.valueOf(visit.work()));
    told.add(String.valueOf(visit.faults()));
    told.add(visit.note());
    return digest(told);
  }

  private static void tell(Reading reading, List<String> told) {
    told.add(reading.quantity());
    told.add(reading.part());
    // in full: the words of a quantity are rounded
    told.add(
        reading.value() == null
            ? ""
            : reading.value().value() + " " + reading.value().measure().code());
    told.add(reading.notTaken());
    told.add(reading.suspect());
  }

  private static String digest(List<String> told) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (String text : told) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        digest.update((bytes.length + ":").getBytes(StandardCharsets.UTF_8));
        digest.update(bytes);
      }
      return Base64.getUrlEncoder()
          .withoutPadding()
          .encodeToString(digest.digest())
          .substring(0, 27);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
