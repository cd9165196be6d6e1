package coldround.intake.edge;

/** What the description of the API shows of imports. */
final class ImportExamples {

  static final String VISITS =
      """
      customer,site,unit,visit,date,ambient [degF],head_pressure [psig],note
      HARBOR,S1,U1,4711,2026-05-12,70,117,coil dusty
      """;

  static final String RECEIPT =
      """
      {"id": "0b6f0e6c-6b0e-4b7e-9d3f-3f1c2f1f6a10", "kind": "visits", "state": "finished",
       "received": "2026-05-13T06:10:00Z", "preview": false, "partial": true, "applied": true,
       "rows": {"read": 120, "created": 117, "changed": 1, "unchanged": 1, "rejected": 1},
       "detected": {"charset": "UTF-8", "delimiter": ",", "profile": "standard"},
       "problems": [{"row": 14, "column": "date", "value": "31/02/2015", "code": "not-a-date",
         "rejects": true, "message": "'31/02/2015' is a day of no calendar."}],
       "problemCount": 1, "problemsByCode": {"not-a-date": 1},
       "problemGroups": [{"code": "not-a-date", "column": "date", "rejects": true, "count": 1,
         "firstRow": 14, "firstValue": "31/02/2015",
         "message": "'31/02/2015' is a day of no calendar."}],
       "firstRows": [{"customer": "HARBOR", "site": "S1", "unit": "U1", "visit": "4711",
         "date": "2026-05-12", "ambient": "70 degF", "head_pressure": "117 psig"}]}""";

  static final String WAITING =
      """
      {"id": "0b6f0e6c-6b0e-4b7e-9d3f-3f1c2f1f6a10", "kind": "visits", "state": "waiting",
       "received": "2026-05-13T06:10:00Z", "preview": false, "partial": true, "applied": false,
       "progress": {"rowsDone": 0}}""";

  static final String READING =
      """
      {"id": "0b6f0e6c-6b0e-4b7e-9d3f-3f1c2f1f6a10", "kind": "visits", "state": "reading",
       "received": "2026-05-13T06:10:00Z", "preview": false, "partial": true, "applied": false,
       "progress": {"rowsDone": 431500, "rowsPerSecond": 9560, "share": 0.431,
         "secondsLeft": 60}}""";

  static final String REJECTED =
      "customer,site,unit,visit,date,problem_row,problem_column,problem\r\n"
          + "HARBOR,S1,U1,4711,31/02/2015,14,date,'31/02/2015' is a day of no calendar.\r\n";

  private ImportExamples() {}
}
