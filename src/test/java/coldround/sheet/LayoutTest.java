package coldround.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where header and data stand. {@code ^} is a line end. */
class LayoutTest {

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      quoteCharacter = '\'',
      delimiter = '!',
      value = {
        "plain              ! 'tag,kg^A1,4.2^A2,3.7'                          ! tag|kg            ! 2 ! 0",
        "no header          ! 'A1,4.2^A2,3.7^A3,1.2'                          ! ''                ! 1 ! 0",
        "only a header      ! 'tag,kg,note'                                   ! tag|kg|note       ! 9223372036854775807 ! 0",
        "title              ! 'Equipment list^tag,kg^A1,4.2^A2,3.7'           ! tag|kg            ! 3 ! 1",
        "title, blank line  ! 'Equipment list,^,^tag,kg^A1,4.2^A2,3.7'        ! tag|kg            ! 4 ! 1",
        "two titles         ! 'List,,^May 2024,,^^tag,kg,at^A1,4,x^A2,3,y'    ! tag|kg|at         ! 5 ! 2",
        "comment            ! '# exported^tag,kg^A1,4.2^A2,3.7'               ! tag|kg            ! 3 ! 1",
        "title with a comma ! 'List, made, today^tag,kg^A1,4.2^A2,3.7'        ! tag|kg            ! 3 ! 1",
        "units below        ! 'tag,charge,head^,kg,psig^A1,4.2,180^A2,3,190'  ! tag|charge kg|head psig ! 3 ! 0",
        "groups above       ! 'tag,size,,on^,kg,m,^A1,4,2,2024-01-02^A2,3,1,2024-01-03' ! tag|size kg|size m|on ! 3 ! 0",
        "header repeated    ! 'tag,kg^tag,kg^A1,4.2^A2,3.7'                   ! tag|kg            ! 3 ! 0",
        "codes like labels  ! 'id,val1,val2^1,v7,v8^2,v9,v10^3,v1,v2'         ! id|val1|val2      ! 2 ! 0",
        "header too short   ! 'tag,kg^A1,4.2,x^A2,3.7,y^A3,1,z'               ! tag|kg|           ! 2 ! 0",
        "header too long    ! 'tag,,kg^A1,4.2^A2,3.7^A3,1'                    ! tag|kg            ! 2 ! 0",
        "line break in it   ! '\"tag x\",kg^A1,4.2^A2,3.7'                   ! tag x|kg         ! 2 ! 0",
        "one column         ! 'tag^A1^A2'                                     ! tag               ! 2 ! 0"
      })
  void titlesHeaderAndDataAreToldApart(
      String name, String text, String labels, long firstDataLine, int titles) {
    Layout layout = Sheets.open(text.replace('^', '\n')).layout();
    assertEquals(labels, String.join("|", layout.labels()));
    assertEquals(firstDataLine, layout.firstDataLine());
    assertEquals(titles, layout.titles());
  }

  @Test
  void blankRowsAreLeftOutAndCounted() {
    Sheet sheet = Sheets.open("tag,kg\nA1,4\n,\n \nA2,3\n\n");
    assertEquals(List.of(List.of("A1", "4"), List.of("A2", "3")), Sheets.cells(sheet));
    assertEquals(3, sheet.blankRows());
  }

  @Test
  void listsPastedBelowEachOtherGoOnWithoutTheirHeadersAndTitles() {
    Sheet sheet =
        Sheets.open("North,\n,\ntag,kg\nA1,4\nA2,3\n,\nSouth,\n,\ntag,kg\nB1,5\nTotal,12\n");
    assertEquals(
        List.of(List.of("A1", "4"), List.of("A2", "3"), List.of("B1", "5"), List.of("Total", "12")),
        Sheets.cells(sheet));
    assertEquals(1, sheet.repeatedHeaders());
  }

  @Test
  void aSecondTableWithOtherColumnsIsNamedRowByRow() {
    Sheet sheet =
        Sheets.open("tag,kg,on\nA1,4,5\nA2,3,6\nA3,3,7\ntag,kg,on,by\nB1,5,6,x\nB2,5,6,y\n");
    List<Row> rows = Sheets.rows(sheet);
    assertEquals(6, rows.size());
    assertEquals(
        List.of(true, true, true, false, false, false),
        rows.stream().map(Row::isReliable).toList());
    assertEquals(Fault.Code.SECOND_TABLE, rows.get(5).faults().get(0).code());
    assertEquals(List.of("B2", "5", "6", "y"), rows.get(5).cells());
  }

  @Test
  void theEndOfFileMarkOfOldSystemsIsNoRow() {
    assertEquals(2, Sheets.cells(Sheets.open("tag,kg\r\nA1,4\r\nA2,3\r\n\u001a")).size());
  }
}
