package coldround.access;

/** A person or program that may use the service. */
public record Account(String id, String name, Role role) {}
