package coldround.http;

import static org.junit.jupiter.api.Assertions.assertEquals;

import coldround.http.Problem.FieldError;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What programs are told of a field, as a sentence for a person who looks at it. */
class WrongTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "is a day such as 2026-05-31 | This must be a day such as 2026-05-31.",
        "is above zero, as it is warm | This must be above zero, as it is warm.",
        "lies after the day to plan on | This must lie after the day to plan on.",
        "lies from -500 m to 11000 m | This must lie from -500 m to 11000 m.",
        "names the person | This must name the person.",
        "has at most 255 characters | This must have at most 255 characters.",
        "is no customer's code | This is no customer's code.",
        "is not known any more | This is not known any more.",
        "is longer than a profile may be | This is longer than a profile may be.",
        "has no saturation curve | This has no saturation curve.",
        "has passed: today is 2026-05-31 | This has passed: today is 2026-05-31.",
        "lies before the first day | This lies before the first day.",
        "belongs to another account; take it there first | This belongs to another account; take it"
            + " there first.",
        "holds the character NUL; leave it out | This holds the character NUL; leave it out.",
        "R-404A at 300 is outside its table. Check it. | R-404A at 300 is outside its table. Check"
            + " it."
      })
  void isASentenceAtItsField(String message, String sentence) {
    Wrong wrong = new Wrong(List.of(new FieldError("/field", "typed", message)));
    assertEquals(sentence, wrong.at("field"));
    assertEquals(List.of("field: " + sentence), wrong.besides(List.of()));
  }
}
