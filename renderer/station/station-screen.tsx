export function StationScreen() {
  return <h1>Station</h1>
}
