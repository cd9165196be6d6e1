package coldround.fleet;

/** Who owns the equipment. The code is the natural key. */
public record Customer(String code, String name, String email, String note) {}
